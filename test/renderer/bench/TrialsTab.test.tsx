// @vitest-environment jsdom
import { cleanup, fireEvent, render, screen } from '@testing-library/react';
import { afterEach, beforeEach, expect, test } from 'vitest';
import demoText from '../../../assets/examples/demo.json?raw';
import { parseProject } from '../../../core/index.ts';
import { CalibrationNote } from '../../../renderer/bench/CalibrationNote.tsx';
import { ImportTab } from '../../../renderer/bench/ImportTab.tsx';
import { setBench } from '../../../renderer/bench/store.ts';
import { TrialsTab } from '../../../renderer/bench/TrialsTab.tsx';
import { setBridge } from '../../../renderer/bridge.ts';
import { currentProject, loadProject, projectStore, undo } from '../../../renderer/store/project.ts';
import { memoryBridge } from '../../helpers/memoryBridge.ts';

const steps = () => projectStore.getState().history?.past.map(({ label }) => label);
const rows = () => screen.getByTestId('trials').querySelectorAll('tbody tr');
const type = (id: string, typed: string) =>
  fireEvent.change(screen.getByTestId(`trial-${id}`), { target: { value: typed } });
const submit = (name: string) => fireEvent.submit(screen.getByLabelText(name, { selector: 'form' }));
const { bridge, saved } = memoryBridge({ handle: null, path: null, name: 'demo.json', text: demoText });

beforeEach(() => {
  const read = parseProject(demoText);
  if (!read.ok) throw new Error('the demo is a good project');
  loadProject(read.value, { handle: null, name: 'demo.json' });
  setBridge(bridge);
});

afterEach(() => {
  cleanup();
  setBench({ draft: null, table: null });
  setBridge(null);
});

test('a trial is typed, refused at its field, put right and added as one step', () => {
  render(<TrialsTab />);
  expect(rows()).toHaveLength(6);
  fireEvent.click(screen.getByText('Add a trial'));
  expect(screen.queryByRole('alert')).toBeNull();
  submit('New trial');
  expect(screen.getAllByRole('alert')).toHaveLength(2);
  type('seconds', '2 min');
  type('grams', '8 mm');
  expect(screen.getByRole('alert').textContent).toMatch(/unit of length/);
  expect(screen.getByTestId('trial-grams').getAttribute('aria-invalid')).toBe('true');
  type('grams', '8,1');
  submit('New trial');
  expect(steps()).toEqual(['Add trial T7']);
  expect(rows()).toHaveLength(7);
  expect(rows()[6]?.textContent).toMatch(/T7.*120.*8\.1.*4\.05/);
});

test('leaving out asks for the reason and shows it; removing is undone', () => {
  render(<TrialsTab />);
  fireEvent.click(screen.getByLabelText('Leave out …: T2'));
  submit('Trial T2');
  expect(steps()).toEqual([]);
  fireEvent.change(screen.getByLabelText('Why it is left out'), { target: { value: 'hopper ran empty' } });
  submit('Trial T2');
  expect(rows()[1]?.textContent).toMatch(/left out: hopper ran empty/);
  fireEvent.click(screen.getByLabelText('Use again: T2'));
  fireEvent.click(screen.getByLabelText('Remove: T1'));
  expect(rows()).toHaveLength(5);
  undo();
  expect(steps()).toEqual(['Change trial T2', 'Use trial T2 again']);
});

test('the log goes out as a table that comes back in unchanged', async () => {
  render(<TrialsTab />);
  fireEvent.click(screen.getByLabelText('with decimal comma'));
  fireEvent.click(screen.getByText('Export as CSV'));
  const text = new TextDecoder('utf-8', { ignoreBOM: true }).decode([...saved.values()].at(-1));
  expect(text.startsWith('\uFEFFid;')).toBe(true);
  const before = currentProject()?.benchLog;
  loadProject(
    { ...(currentProject() as NonNullable<ReturnType<typeof currentProject>>), benchLog: [] },
    { handle: null, name: 'x' },
  );
  setBench({ table: { name: 'x.csv', text, choices: {} } });
  cleanup();
  render(<ImportTab />);
  fireEvent.click(screen.getByText('Add 6 trials to the log'));
  expect(currentProject()?.benchLog).toEqual(before);
  expect(steps()).toEqual(['Import 6 trials']);
});

test('a pasted table shows faulty lines with their place, and units can be put right', () => {
  render(<ImportTab />);
  const text = 'rpm;time;mass\n10;2;8,1\nx;2;8\n';
  fireEvent.change(screen.getByTestId('paste'), { target: { value: text } });
  expect(screen.getByTestId('account').textContent).toBe('3 lines: 1 trial, 1 faulty, 1 without a trial.');
  expect(screen.getByText('1 faulty line will stay out.', { exact: false })).toBeTruthy();
  fireEvent.change(screen.getByLabelText('time: Unit'), { target: { value: 'min' } });
  fireEvent.click(screen.getByText('Add 1 trial to the log'));
  expect(currentProject()?.benchLog.at(-1)).toMatchObject({ seconds: 120, grams: 8.1, screwSpeedRpm: 10 });
});

test('the note says by what a revision is calibrated, and takes it off', () => {
  const project = currentProject();
  if (!project) throw new Error('a project is open');
  const held = { value: 1, low: 1, high: 1, fitted: false };
  const calibration = {
    id: 'c1',
    name: 'Two trials',
    materialId: 'pale-wood-micro',
    trialIds: ['T4', 'gone'],
    factors: { feed: held, wallFriction: held, colourRate: held, viscosity: { ...held, value: 1.3, fitted: true } },
    error: { before: 0.3, after: 0.05, leaveOneOut: null },
  };
  const revisions = project.revisions.map((each) => (each.id === 'C' ? { ...each, calibrationId: 'c1' } : each));
  loadProject({ ...project, revisions, calibrations: [calibration] }, { handle: null, name: 'demo.json' });
  render(<CalibrationNote />);
  const note = screen.getByTestId('calibration-note').textContent;
  expect(note).toMatch(
    /by 2 trials: T4, gone.*viscosity ×1\.3; typical error 35 % before, 5\.1 % after.*1 of them no longer/,
  );
  fireEvent.click(screen.getByText('Take it off'));
  expect(screen.queryByTestId('calibration-note')).toBeNull();
  expect(steps()).toEqual(['Take the calibration off C']);
});
