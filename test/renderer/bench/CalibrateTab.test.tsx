// @vitest-environment jsdom
import { act, cleanup, fireEvent, render, screen } from '@testing-library/react';
import { afterEach, beforeEach, expect, test } from 'vitest';
import demoText from '../../../assets/examples/demo.json?raw';
import { type CalibrationFit, parseProject } from '../../../core/index.ts';
import { CalibrateTab } from '../../../renderer/bench/CalibrateTab.tsx';
import { type BenchWorker, dropRuns, setBenchWorker } from '../../../renderer/bench/runs.ts';
import type { BenchAnswer, BenchRequest } from '../../../renderer/bench/solve/protocol.ts';
import { setBench } from '../../../renderer/bench/store.ts';
import { applyEdit, loadProject, projectStore } from '../../../renderer/store/project.ts';

const held = { value: 1, low: 1, high: 1, fitted: false, reason: 'It was not asked for.', entangled: false };
const fit: CalibrationFit = {
  factors: {
    feed: { ...held, reason: 'These trials do not show it: feed does not limit any of them.' },
    wallFriction: held,
    viscosity: { value: 1.21, low: 1.1, high: 1.33, fitted: true, reason: null, entangled: false },
    colourRate: held,
  },
  observations: [
    {
      trialId: 'T4',
      kind: 'torque',
      measured: 3.9,
      predictedBefore: 3,
      predictedAfter: 3.8,
      before: 0.26,
      after: 0.026,
      leaveOneOut: null,
      weight: 0.1,
    },
  ],
  trialIds: ['T4', 'T5', 'T6'],
  skipped: [{ trialId: 'T1', reason: 'It was not weighed.' }],
  outliers: ['T4'],
  error: { before: { rms: 0.3, median: 0.2 }, after: { rms: 0.05, median: 0.04 }, leaveOneOut: null },
  scale: 1,
  freedom: 2,
  converged: true,
  rounds: 4,
  evaluations: 42,
};

let asked: BenchRequest | null = null;
let say: (answer: BenchAnswer) => void = () => undefined;

beforeEach(() => {
  const read = parseProject(demoText);
  if (!read.ok) throw new Error('the demo is a good project');
  loadProject(read.value, { handle: null, name: 'demo.json' });
  setBenchWorker(() => {
    const worker: BenchWorker = {
      postMessage: (request) => {
        asked = request;
      },
      terminate: () => undefined,
      onmessage: null,
      onerror: null,
    };
    say = (data) => act(() => worker.onmessage?.({ data } as MessageEvent<BenchAnswer>));
    return worker;
  });
});

afterEach(() => {
  cleanup();
  dropRuns();
  setBench({ scope: 'material', factors: ['viscosity', 'feed'] });
});

const steps = () => projectStore.getState().history?.past.map(({ label }) => label);

function found(): void {
  render(<CalibrateTab />);
  fireEvent.click(screen.getByText('Find the factors'));
  say({ kind: 'fit', fit });
}

test('asks for the chosen factors of the chosen trials, and can be cancelled', () => {
  render(<CalibrateTab />);
  fireEvent.click(screen.getByLabelText(/of this revision only/));
  fireEvent.click(screen.getByLabelText('Feed'));
  fireEvent.click(screen.getByText('Find the factors'));
  expect(asked).toMatchObject({ kind: 'fit', trialIds: ['T4', 'T5', 'T6'], factors: ['viscosity'] });
  say({ kind: 'progress', done: 3, of: 54 });
  expect(screen.getByRole('status').textContent).toBe('3 of about 54 predictions');
  fireEvent.click(screen.getByText('Cancel'));
  expect(screen.queryByRole('status')).toBeNull();
});

test('shows factors, what is not told and why, errors, and changes nothing', () => {
  found();
  expect(screen.getByTestId('factors').textContent).toMatch(/feed does not limit.*Viscosity×1\.211\.1 … 1\.33/s);
  expect(screen.getByTestId('errors').textContent).toMatch(/35 %.*5\.1 %.*cannot be told/s);
  expect(screen.getByTestId('observations').textContent).toMatch(/T4torque3\.9 N·m.*▲ hardly/);
  expect(steps()).toEqual([]);
});

test('applied, the open revision is calibrated and says so; discarded, nothing is', () => {
  found();
  fireEvent.click(screen.getByText('Discard'));
  expect(screen.queryByTestId('factors')).toBeNull();
  expect(steps()).toEqual([]);
  cleanup();
  found();
  fireEvent.click(screen.getByText('Apply to revision C'));
  expect(steps()).toEqual(['Calibrate revision C']);
  expect(screen.getByTestId('calibration-note').textContent).toMatch(/by 3 trials: T4, T5, T6.*viscosity ×1\.21/);
  expect(screen.getByTestId('kept').textContent).toMatch(/used by C/);
});

test('factors of an earlier state of the project cannot be applied', () => {
  found();
  act(() => applyEdit((project) => ({ ...project, benchLog: project.benchLog.slice(1) }), { label: 'other' }));
  const apply = screen.getByText('Apply to revision C') as HTMLButtonElement;
  expect(apply.disabled).toBe(true);
  expect(screen.getByText(/has changed since these factors were found/)).toBeTruthy();
});
