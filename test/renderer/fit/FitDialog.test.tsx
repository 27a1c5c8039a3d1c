// @vitest-environment jsdom
import { cleanup, fireEvent, render, screen } from '@testing-library/react';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import demoText from '../../../assets/examples/demo.json?raw';
import { parseProject } from '../../../core/index.ts';
import { FitDialog } from '../../../renderer/fit/FitDialog.tsx';
import { fitAnswers } from '../../../renderer/fit/solve/desk.ts';
import { setFitWorker } from '../../../renderer/fit/startWorker.ts';
import { openFit, setFit } from '../../../renderer/fit/store.ts';
import { answering } from '../../../renderer/solve/answering.ts';
import type { JobWorker } from '../../../renderer/solve/job.ts';
import { currentProject, loadProject, projectStore, undo } from '../../../renderer/store/project.ts';
import { setView, viewStore } from '../../../renderer/store/view.ts';

// Drawing needs a canvas, which this environment lacks; what is drawn is tested with the desk.
vi.mock('../../../renderer/plots/Chart.tsx', () => ({ Chart: () => null, axis: () => ({}) }));

// Dialogs look for settings by escaped names, and this environment has no CSS object.
vi.stubGlobal('CSS', { escape: (name: string) => name });

/** A worker that answers at once, in this thread. */
function fakeWorker(): JobWorker {
  const worker: JobWorker = {
    onmessage: null,
    onerror: null,
    terminate: () => undefined,
    postMessage: (ask) => {
      const hear = answering(fitAnswers, (data) => worker.onmessage?.({ data } as MessageEvent));
      setTimeout(() => hear({ data: structuredClone(ask) } as MessageEvent));
    },
  };
  return worker;
}

const rows = [170, 190].flatMap((celsius) =>
  [10, 30, 100, 300].map(
    (rate) => `${rate}\t${celsius}\t${(1200 * rate ** -0.5 * Math.exp(-0.02 * (celsius - 170))).toFixed(2)}`,
  ),
);
const table = [
  'shear rate (1/s)\ttemperature (°C)\tviscosity (Pa·s)',
  ...rows.slice(0, 3),
  '100\t170\tx',
  ...rows.slice(3),
];

beforeEach(() => {
  const demo = parseProject(demoText);
  if (!demo.ok) throw new Error('the demo is a good project');
  loadProject(demo.value, { handle: null, name: 'demo.json' });
  setFitWorker(fakeWorker);
  setFit({ text: '', model: 'powerLaw', shift: 'exponential', filled: false });
  openFit('pale-wood-micro');
  render(<FitDialog />);
});

afterEach(() => {
  cleanup();
  setView({ dialog: 'none', notice: null });
});

test('a pasted table is read, its faulty row told, the law fitted and taken over as one step', async () => {
  const before = currentProject();
  fireEvent.change(screen.getByLabelText('Table of readings'), { target: { value: table.join('\n') } });
  const index = await screen.findByText('Flow index n');
  expect(index.closest('tr')?.textContent).toMatch(/0\.5.*determined/);
  expect(screen.getByText('8 readings at 2 temperatures.')).toBeTruthy();
  expect(screen.getByText(/Line 5: the viscosity cannot be read/).textContent).toContain('“x”');
  fireEvent.click(screen.getByText(/^Take over into Pale wood/));
  expect(currentProject()?.materials[0]).toMatchObject({
    rheology: { model: 'powerLaw', index: { value: expect.closeTo(0.5, 3), status: 'measured here' } },
  });
  expect(viewStore.getState().dialog).toBe('none');
  expect(projectStore.getState().history?.past).toHaveLength(1);
  undo();
  expect(currentProject()).toBe(before);
});

test('what cannot be fitted says what is missing, and nothing can be taken over', async () => {
  fireEvent.change(screen.getByLabelText('Table of readings'), { target: { value: table.slice(0, 2).join('\n') } });
  expect(await screen.findByText(/too few points/)).toBeTruthy();
  expect(screen.queryByText(/^Take over/)).toBeNull();
});
