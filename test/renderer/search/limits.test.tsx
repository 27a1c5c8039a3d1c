// @vitest-environment jsdom
import { act, cleanup, fireEvent, render, screen } from '@testing-library/react';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import demoText from '../../../assets/examples/demo.json?raw';
import waxText from '../../../assets/examples/wax-head.json?raw';
import { parseProject, proposedLimits } from '../../../core/index.ts';
import '../../../renderer/search/acts.ts';
import { Limits } from '../../../renderer/search/Limits.tsx';
import { proposeFor } from '../../../renderer/search/proposals.ts';
import { emptySearch, type LimitSetup, searchStore, setSearch } from '../../../renderer/search/store.ts';
import { loadProject } from '../../../renderer/store/project.ts';
import { searchText } from '../../../renderer/strings/search.ts';

function opened(text: string) {
  const parsed = parseProject(text);
  if (!parsed.ok) throw new Error('the example does not open');
  return parsed.value;
}
const project = opened(demoText);
const find = (figure: string) => searchStore.getState().limits?.find((limit) => limit.figure === figure);
const proposed = (revisionId: string, figure: string) =>
  proposedLimits(project, revisionId).find((limit) => limit.figure === figure);

beforeEach(() => {
  loadProject(project, { handle: null, name: 'demo.json' });
  searchStore.setState(emptySearch);
});
afterEach(cleanup);

test('another revision gets its own proposals; what was stated and what is ticked stays', () => {
  // one revision is given a weaker barrel
  const weak = {
    ...project,
    revisions: project.revisions.map((one) =>
      one.id === 'A' ? { ...one, barrel: { ...one.barrel, pressureLimitMPa: 12 } } : one,
    ),
  };
  proposeFor(project, 'C');
  const own: LimitSetup = { figure: 't95', sense: 'atMost', bound: 77, on: true, why: 'own', own: true };
  const changed = searchStore.getState().limits?.map((limit) => {
    if (limit.figure === 't95') return own;
    return limit.figure === 'unmelted' ? { ...limit, on: false } : limit;
  });
  setSearch({ limits: (changed ?? []).filter(({ figure }) => figure !== 'torqueShare') });
  proposeFor(weak, 'C');
  expect(find('torqueShare')).toBeUndefined();
  expect(find('headPressure')?.bound).toBe(proposed('C', 'headPressure')?.bound);
  proposeFor(weak, 'A');
  expect(find('headPressure')?.bound).toBe(12e6);
  expect(find('torqueShare')).toBeDefined();
  expect(find('unmelted')?.on).toBe(false);
  expect(searchStore.getState().limits?.filter(({ figure }) => figure === 't95')).toEqual([own]);
});

test('proposed bounds follow the machine they are for', () => {
  proposeFor(project, 'C');
  const limited = project.revisions.map((one) => ({ ...one, barrel: { ...one.barrel, pressureLimitMPa: 9 } }));
  proposeFor({ ...project, revisions: limited }, 'C');
  expect(find('headPressure')).toMatchObject({ bound: 9e6, own: false });
});

test('opening another project leaves nothing of the last one’s search', () => {
  proposeFor(project, 'C');
  setSearch({ axes: [{ input: 'joint.lead', from: 10, to: 14, steps: 3, scale: 'linear' }] });
  act(() => loadProject(opened(waxText), { handle: null, name: 'wax-head.json' }));
  expect(searchStore.getState()).toEqual(emptySearch);
});

test('two limits on one figure close it from both sides and never from one', () => {
  const fault = vi.spyOn(console, 'error').mockImplementation(() => undefined);
  const pair = (sense: LimitSetup['sense'], bound: number): LimitSetup => ({
    figure: 'torque',
    sense,
    bound,
    on: true,
    why: 'own',
    own: true,
  });
  setSearch({ limits: [pair('atMost', 2), pair('atLeast', 1)], limitsFor: 'C' });
  render(<Limits project={project} />);
  const [, second] = screen.getAllByLabelText(searchText.goal.keep) as HTMLSelectElement[];
  expect([...(second?.options ?? [])].map(({ disabled }) => disabled)).toEqual([false, true]);
  fireEvent.change(second as HTMLSelectElement, { target: { value: 'atMost' } });
  expect(searchStore.getState().limits?.map(({ sense }) => sense)).toEqual(['atMost', 'atLeast']);
  expect(fault).not.toHaveBeenCalled();
  fault.mockRestore();
});
