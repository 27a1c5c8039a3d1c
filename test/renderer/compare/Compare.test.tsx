// @vitest-environment jsdom
import { cleanup, fireEvent, render, screen, within } from '@testing-library/react';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import demoText from '../../../assets/examples/demo.json?raw';
import { type Prediction, parseProject, predict, present, validateDesign } from '../../../core/index.ts';
import { Answer } from '../../../renderer/compare/Answer.tsx';
import { Compare } from '../../../renderer/compare/Compare.tsx';
import { RevisionStrip } from '../../../renderer/compare/RevisionStrip.tsx';
import { runKey, runStore } from '../../../renderer/compare/runs.ts';
import { compareStore, openCompare } from '../../../renderer/compare/store.ts';
import { Revisions } from '../../../renderer/panels/Revisions.tsx';
import { currentProject, isUnsaved, loadProject, projectStore } from '../../../renderer/store/project.ts';
import { setView, viewStore } from '../../../renderer/store/view.ts';
import { compareText } from '../../../renderer/strings/compare.ts';
import { text } from '../../../renderer/strings.ts';

// Charts ask for the screen's pixel ratio when they are loaded, which this stand-in for a browser cannot say.
vi.hoisted(() => {
  const answer = { matches: false, addEventListener: () => undefined, removeEventListener: () => undefined };
  class Still {
    observe = () => undefined;
    unobserve = () => undefined;
    disconnect = () => undefined;
  }
  // dialogs also ask for these two, which it does not have
  Object.assign(globalThis, {
    matchMedia: () => answer,
    CSS: { escape: (name: string) => name },
    ResizeObserver: Still,
  });
});

const parsed = parseProject(demoText);
if (!parsed.ok) throw new Error('the demo does not open');
const project = parsed.value;
const shape = { revisionId: 'C', flights: [] } as never;

/** Estimate and invented solved numbers of a revision: its output times a factor. */
function made(id: string, factor: number) {
  const design = validateDesign(project, id);
  if (!design.ok) throw new Error('the demo is refused');
  const prediction = predict(design.value, { curvePoints: 0 });
  const output = { ...prediction.output, volumeFlow: prediction.output.volumeFlow * factor };
  const scaled: Prediction = { ...prediction, output };
  return { prediction: scaled, presentation: present(prediction, design.value) };
}
const [a, b] = [made('A', 1), made('A', 2)];
const foundOf = (id: string, one: typeof a) => {
  const renamed = { ...one, prediction: { ...one.prediction, revisionId: id } };
  return [runKey(project, id), { estimate: renamed, solved: renamed, shape }] as const;
};

beforeEach(() => {
  loadProject(project, { handle: null, name: 'demo.json' });
  compareStore.setState({ chosen: null, base: null, tab: 'numbers', alignment: 'feed' });
  const found = Object.fromEntries([foundOf('A', a), foundOf('B', b)]);
  runStore.setState({ found, now: null, running: false, stopped: true });
});
afterEach(() => {
  cleanup();
  setView({ dialog: 'none' });
});

const cells = (label: string) =>
  within(screen.getByRole('rowheader', { name: label }).closest('tr') as HTMLElement)
    .getAllByRole('cell')
    .map((cell) => cell.textContent);

test('the answer stands above, the table says by how much, and the base can be chosen', () => {
  openCompare(['A', 'B']);
  render(<Compare />);
  expect(document.querySelector('.better-for-what')?.textContent).toMatch(/For output B is best: .*100\s% more than A/);
  expect(screen.getByText(compareText.answer.solved)).toBeTruthy();
  expect(cells('Melt output')[1]).toMatch(/▲ better, \+100/);
  expect(cells('Melt output').at(-1)).toBe('±5\u00a0%');
  expect(cells('Mean residence')[1]).toContain('= same');
  fireEvent.change(screen.getByRole('combobox', { name: compareText.base }), { target: { value: 'B' } });
  expect(cells('Melt output')[0]).toMatch(/▼ worse, −50/);
  const heads = screen.getAllByRole('columnheader').map((head) => head.textContent);
  expect(heads).toEqual(['Value', 'A', 'Bbase', 'Model error']);
  // a comparison is handed over as a report, led by the base
  fireEvent.click(screen.getByText(compareText.handOver));
  expect(viewStore.getState().dialog).toBe('handover');
});

test('a refused revision is named with its reason and the others are compared without it', () => {
  const key = runKey(project, 'C');
  runStore.setState(({ found }) => ({ found: { ...found, [key]: { refusal: 'The root is wider than the bore.' } } }));
  openCompare(['A', 'B', 'C']);
  render(<Compare />);
  expect(screen.getByText(/^✕ C is refused, so it is left out: The root is wider than the bore\.$/)).toBeTruthy();
  expect(document.querySelector('.better-for-what')?.textContent).toMatch(/^For output B is best/);
  expect(screen.queryByRole('columnheader', { name: 'C' })).toBeNull();
});

test('one revision alone is no comparison; the description shows what differs, or all of it', () => {
  openCompare(['A', 'B']);
  compareStore.setState({ tab: 'described' });
  render(<Compare />);
  const rows = () => screen.getAllByRole('row').length;
  const few = rows();
  fireEvent.click(screen.getByRole('checkbox', { name: compareText.described.onlyDifferent }));
  expect(rows()).toBeGreaterThan(few + 20);
  fireEvent.click(screen.getByRole('checkbox', { name: /^B/ }));
  expect(screen.getByText(compareText.chooseMore)).toBeTruthy();
});

test('stopped calculations are said so and can be gone on with', () => {
  runStore.setState({ found: {}, stopped: true });
  openCompare(['A', 'B']);
  render(<Compare />);
  expect(screen.getAllByText(compareText.run.stopped)).toHaveLength(2);
  expect(screen.getByRole('button', { name: compareText.run.goOn })).toBeTruthy();
});

test('the strip shows another revision without making a change; many revisions get a list', () => {
  render(<RevisionStrip />);
  fireEvent.click(screen.getByRole('button', { name: /^A: / }));
  expect(currentProject()?.activeRevision).toBe('A');
  expect(isUnsaved(projectStore.getState())).toBe(false);
  expect(screen.queryByRole('button', { name: /^All/ })).toBeNull();
  cleanup();
  const first = project.revisions[0];
  const more = Array.from({ length: 17 }, (_, i) => ({ ...first, id: `R${i}`, name: `Number ${i}` }));
  loadProject({ ...project, revisions: [...project.revisions, ...more] } as typeof project, { handle: null, name: '' });
  render(<RevisionStrip />);
  expect(screen.getAllByRole('button')).toHaveLength(6);
  fireEvent.click(screen.getByRole('button', { name: text.revisions.allLabel(20) }));
  expect(screen.getAllByRole('menuitemradio')).toHaveLength(20);
});

test('the list of revisions tells descent, refuses what is no day, and compares with the parent', () => {
  setView({ dialog: 'revisions' });
  render(<Revisions />);
  const card = screen.getByRole('listitem', { name: /^B: / });
  expect(within(card).getByText(/^from A; \d+ values? differs? from A/)).toBeTruthy();
  const date = within(card).getByLabelText(text.revisions.date);
  const before = currentProject();
  fireEvent.change(date, { target: { value: 'soon' } });
  fireEvent.blur(date);
  expect(within(card).getByRole('alert').textContent).toContain('“soon” is no date');
  expect(currentProject()).toBe(before);
  fireEvent.change(date, { target: { value: '2026-04-05' } });
  fireEvent.blur(date);
  expect(currentProject()?.revisions[1]?.date).toBe('2026-04-05');
  fireEvent.click(within(card).getByRole('button', { name: text.revisions.against('A') }));
  expect(viewStore.getState().dialog).toBe('compare');
  expect(compareStore.getState()).toMatchObject({ chosen: ['A', 'B'], base: 'A' });
});

test('a run that broke is not called a refused design', () => {
  runStore.setState({ found: { [runKey(project, 'B')]: { fault: 'out of memory' } } });
  const compared = ['B'].map((id) => ({ id, found: runStore.getState().found[runKey(project, id)] ?? {} }));
  render(<Answer compared={compared as never} />);
  expect(screen.getByText(compareText.answer.broken('B', 'out of memory'))).toBeTruthy();
  expect(screen.queryByText(/is refused/)).toBeNull();
});
