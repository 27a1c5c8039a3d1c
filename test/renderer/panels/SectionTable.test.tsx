// @vitest-environment jsdom
import { cleanup, fireEvent, render, screen, waitFor, within } from '@testing-library/react';
import { afterEach, beforeEach, expect, test } from 'vitest';
import demoText from '../../../assets/examples/demo.json?raw';
import { parseProject } from '../../../core/index.ts';
import { SectionTable } from '../../../renderer/panels/SectionTable.tsx';
import { dropDrafts } from '../../../renderer/store/drafts.ts';
import { activeRevision, currentProject, loadProject, projectStore, undo } from '../../../renderer/store/project.ts';
import { setView } from '../../../renderer/store/view.ts';

const sections = () => {
  const project = currentProject();
  return project ? activeRevision(project).screw.sections : [];
};
const names = () => sections().map(({ name }) => name);
const lastStep = () => projectStore.getState().history?.past.at(-1)?.label;

// jsdom has no CSS.escape, which the widget library asks for when a menu opens.
Object.assign(globalThis, { CSS: { escape: (text: string) => text } });

/** A button by its label or its words; quicker than by role in a table of many fields. */
function button(name: string): HTMLElement {
  const found = [...document.querySelectorAll<HTMLElement>('button')].find(
    (one) => (one.getAttribute('aria-label') ?? one.textContent) === name,
  );
  if (!found) throw new Error(`no button is called ${name}`);
  return found;
}

async function choose(section: string, act: string) {
  fireEvent.click(screen.getByRole('button', { name: `Actions: ${section}` }));
  fireEvent.click(await screen.findByText(act));
}

beforeEach(() => {
  const demo = parseProject(demoText);
  if (!demo.ok) throw new Error('the demo is a good project');
  loadProject(demo.value, { handle: null, name: 'demo.json' });
  render(<SectionTable />);
});
afterEach(() => {
  cleanup();
  dropDrafts([]);
  setView({ units: 'metric' });
});

test('a name is typed, as one readable step', () => {
  const input = screen.getByLabelText('Section 2, name');
  fireEvent.change(input, { target: { value: 'squeeze' } });
  fireEvent.keyDown(input, { key: 'Enter' });
  expect(names()[1]).toBe('squeeze');
  expect(lastStep()).toBe('Section 2: Name');
});

test('Alt with an arrow moves a section, the focus goes with it, and what was being typed is kept', async () => {
  const input = screen.getByLabelText('Section 1, Length');
  input.focus();
  fireEvent.change(input, { target: { value: '50' } });
  fireEvent.keyDown(input, { key: 'ArrowRight', altKey: true });
  expect(names()).toEqual(['compression', 'feed', 'metering']);
  expect(sections()[1]?.lengthMm).toBe(50);
  expect(lastStep()).toBe('Section 1: Move towards tip');
  await waitFor(() => expect(document.activeElement).toBe(screen.getByLabelText('Section 2, Length')));
  undo();
  expect(names()).toEqual(['feed', 'compression', 'metering']);
});

test('small buttons move too, and end at the ends', () => {
  fireEvent.click(button('Move towards feed: Section 3'));
  expect(names()).toEqual(['feed', 'metering', 'compression']);
  expect(button('Move towards feed: Section 1').hasAttribute('disabled')).toBe(true);
});

test('a section dragged onto another takes its place', () => {
  const data = new Map<string, string>();
  const dataTransfer = {
    setData: (type: string, value: string) => data.set(type, value),
    getData: (type: string) => data.get(type) ?? '',
    get types() {
      return [...data.keys()];
    },
  };
  const heads = [...document.querySelectorAll('thead th[data-section]')];
  fireEvent.dragStart(within(heads[0] as HTMLElement).getByText('1'), { dataTransfer });
  fireEvent.dragOver(heads[2] as Element, { dataTransfer });
  fireEvent.drop(heads[2] as Element, { dataTransfer });
  expect(names()).toEqual(['compression', 'metering', 'feed']);
});

test('merging with the next, and the reason where it cannot be', async () => {
  await choose('Section 1', 'Merge with the next');
  expect(names()).toEqual(['feed', 'metering']);
  expect(lastStep()).toBe('Section 1: Merge with the next');
  fireEvent.click(button('Actions: Section 2'));
  const merge = (await screen.findByText('Merge with the next')).closest('[role=menuitem]') as HTMLElement;
  expect(merge.getAttribute('aria-disabled')).toBe('true');
  expect(merge.textContent).toContain('there is no next section');
});

test('a split at a place asks where, refuses a place outside, and cuts there', async () => {
  await choose('Section 2', 'Split at a place …');
  const place = screen.getByLabelText('Distance');
  fireEvent.change(place, { target: { value: '60' } });
  fireEvent.keyDown(place, { key: 'Enter' });
  expect((document.querySelector('[role=alert]') as HTMLElement).textContent).toContain('55 mm');
  fireEvent.click(button('Split'));
  expect(sections()).toHaveLength(3);
  fireEvent.change(place, { target: { value: '1/2 in' } });
  fireEvent.keyDown(place, { key: 'Enter' });
  fireEvent.click(button('Split'));
  expect(sections().map(({ lengthMm }) => lengthMm)).toEqual([55, 12.7, 42.3, 50]);
  expect(screen.queryByLabelText('Distance')).toBeNull();
});

test('totals are told against the barrel, open joints are counted and joined', () => {
  const totals = document.querySelector('.section-totals');
  expect(totals?.textContent).toMatch(/Sections 160 mm of 16\d mm barrel, [\d.]+ mm left/);
  const join = button('Join ends');
  expect(join.hasAttribute('disabled')).toBe(true);
  const root = screen.getByLabelText('Section 3, Root Ø start');
  fireEvent.change(root, { target: { value: '9' } });
  fireEvent.keyDown(root, { key: 'Enter' });
  expect(totals?.textContent).toContain('1 step between sections');
  fireEvent.click(join);
  expect(sections()[2]?.rootDiameterStartMm).toBe(10.4);
  expect(document.querySelector('.section-ends')?.textContent).toBe('Ends at mm55110160');
});
