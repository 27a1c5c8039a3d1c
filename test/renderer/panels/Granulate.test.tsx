// @vitest-environment jsdom
import { cleanup, fireEvent, render, screen, waitFor, within } from '@testing-library/react';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import demoText from '../../../assets/examples/demo.json?raw';
import hdpeText from '../../../assets/materials/hdpe.json?raw';
import { checkProject, parseProject, type Sourced } from '../../../core/index.ts';
import { memoryBridge, setBridge } from '../../../renderer/bridge.ts';
import { addFromLibrary } from '../../../renderer/library.ts';
import { Granulate } from '../../../renderer/panels/Granulate.tsx';
import { dropDrafts } from '../../../renderer/store/drafts.ts';
import { type Path, valueAt } from '../../../renderer/store/path.ts';
import { currentProject, loadProject, projectStore, undo } from '../../../renderer/store/project.ts';
import { viewStore } from '../../../renderer/store/view.ts';

// Drawing needs a canvas, which this environment lacks; the curves themselves are tested in core.
vi.mock('../../../renderer/plots/Chart.tsx', () => ({ Chart: () => null, axis: () => ({}) }));

// Menus find their entries by escaped ids, and this environment has no CSS object.
vi.stubGlobal('CSS', { escape: (name: string) => name });

const value = (...path: Path) => valueAt(currentProject(), path);
const steps = () => projectStore.getState().history?.past.map(({ label }) => label);
const choose = (name: string, option: string) =>
  fireEvent.change(screen.getByLabelText(name, { selector: 'select' }), { target: { value: option } });
const enter = (name: string, typed: string) => {
  const input = screen.getByLabelText(name, { selector: 'input, textarea' });
  fireEvent.change(input, { target: { value: typed } });
  fireEvent.blur(input);
  return input;
};

beforeEach(() => {
  const demo = parseProject(demoText);
  if (!demo.ok) throw new Error('the demo is a good project');
  loadProject(demo.value, { handle: null, name: 'demo.json' });
  const start = { handle: null, path: null, name: 'demo.json', text: demoText };
  const library = [
    { id: 'hdpe', title: 'HDPE, generic', note: '', text: hdpeText },
    { id: 'torn', title: 'Torn', note: '', text: '{"id":' },
  ];
  setBridge(memoryBridge(start, [], library).bridge);
  render(<Granulate />);
});

afterEach(() => {
  cleanup();
  dropDrafts([]);
  setBridge(null);
});

describe('the library', () => {
  test('a material is copied into the project as one named step, and can then be run', async () => {
    fireEvent.click(screen.getByLabelText('Add from library'));
    fireEvent.click(await screen.findByRole('menuitem', { name: /^HDPE/ }));
    await waitFor(() => expect(steps()).toEqual(['Add HDPE, generic']));
    choose('Granulate', 'hdpe');
    expect(value('revisions', 2, 'materialId')).toBe('hdpe');
    expect(screen.getByLabelText('Name')).toHaveProperty('value', 'HDPE, generic');
    undo();
    undo();
    expect(currentProject()).toEqual(JSON.parse(demoText));
  });

  test('a damaged file adds nothing and says why', async () => {
    await addFromLibrary('torn');
    expect(steps()).toEqual([]);
    expect(viewStore.getState().notice).toMatchObject({ kind: 'bad', text: expect.stringMatching(/line 1/i) });
  });

  test('what is run cannot be removed; a copy can', async () => {
    const tools = (name: RegExp) => screen.getByLabelText(name);
    fireEvent.click(tools(/^Actions: Pale wood/));
    expect(screen.getByRole('menuitem', { name: 'Remove' }).getAttribute('aria-disabled')).toBe('true');
    fireEvent.click(screen.getByRole('menuitem', { name: 'Duplicate' }));
    expect(value('materials', 1, 'id')).toBe('pale-wood-micro-2');
    const list = within(screen.getByLabelText('Materials of this project'));
    expect(list.getAllByRole('listitem')[1]?.textContent).toMatch(/copy.*not used/);
    fireEvent.click(list.getAllByRole('button')[1] as HTMLElement);
    fireEvent.click(screen.getByRole('menuitem', { name: 'Remove' }));
    expect(value('materials', 1)).toBeUndefined();
  });
});

describe('the law', () => {
  test('another law is one step with marked start values; undo brings the old one back', () => {
    const before = value('materials', 0, 'rheology');
    choose('Viscosity law', 'powerLaw');
    expect(value('materials', 0, 'rheology')).toMatchObject({
      model: 'powerLaw',
      consistencyPaSn: { status: 'estimated', source: expect.stringMatching(/185 °C and 100 1\/s/) },
    });
    expect(screen.getByLabelText('Consistency K')).toBeTruthy();
    choose('With temperature', 'exponential');
    expect(screen.getByLabelText('Temperature coefficient')).toBeTruthy();
    expect(steps()).toEqual(['Viscosity law: Power law', 'With temperature: exponential']);
    undo();
    undo();
    expect(value('materials', 0, 'rheology')).toBe(before);
  });

  test('filler goes and comes back as estimated', () => {
    const box = screen.getByLabelText('Filled melt');
    fireEvent.click(box);
    expect(value('materials', 0, 'filler')).toBeUndefined();
    expect(screen.queryByLabelText('Filler by volume')).toBeNull();
    fireEvent.click(box);
    expect(value('materials', 0, 'filler', 'volumeFraction')).toMatchObject({ status: 'estimated' });
  });
});

describe('source, status and doubt', () => {
  const density: Path = ['materials', 0, 'meltDensityKgM3'];
  const stored = () => value(...density) as Sourced;

  beforeEach(() => {
    fireEvent.click(screen.getByLabelText(/^Source and doubt of Melt density/));
  });

  test('each is edited in place as a named step', () => {
    enter('Source', 'weighed strand, my bench');
    choose('Status', 'measured here');
    enter('Melt density, doubt from', '1.05 g/cm³');
    expect(stored()).toMatchObject({ source: 'weighed strand, my bench', status: 'measured here', low: 1050 });
    expect(steps()).toEqual(['Melt density, Source', 'Melt density, Status', 'Melt density, doubt from']);
  });

  test('an emptied end of doubt is gone; the source cannot be emptied', () => {
    enter('Melt density, doubt from', '');
    enter('Melt density, doubt to', '');
    expect(Object.keys(stored())).toEqual(expect.not.arrayContaining(['low', 'high']));
    expect(checkProject(currentProject()).ok).toBe(true);
    const { source } = stored();
    enter('Source', ' ');
    expect(stored().source).toBe(source);
  });

  test('a range that does not enclose the value is refused at its field, with what is allowed', () => {
    const { value: now, high } = stored();
    const input = enter('Melt density, doubt from', String(now + 1));
    expect(input.getAttribute('aria-invalid')).toBe('true');
    expect(screen.getByRole('alert').textContent).toContain(`at most ${now}`);
    fireEvent.keyDown(input, { key: 'Escape' });
    enter('Melt density', String((high ?? 0) + 1));
    expect(screen.getByRole('alert').textContent).toContain(`at most ${high}`);
    expect(steps()).toEqual([]);
  });
});

describe('aging and cautions', () => {
  test('changes and colours come and go by named steps', () => {
    fireEvent.click(screen.getByText('Add a change'));
    fireEvent.click(screen.getByText('Add a colour'));
    fireEvent.click(screen.getByLabelText('Actions: Colour 1'));
    fireEvent.click(screen.getByRole('menuitem', { name: 'Remove' }));
    choose('Colour follows', '');
    expect(steps()).toEqual(['Add a change', 'Add a colour', 'Remove: Colour', 'Colour follows']);
    expect(checkProject(currentProject()).ok).toBe(true);
  });

  test('cautions are added at the end, edited and removed', () => {
    const list = () => value('materials', 0, 'cautions') as string[];
    const { length } = list();
    enter('Add a caution', 'Dry it well.');
    expect(list()[length]).toBe('Dry it well.');
    enter(`Caution ${length + 1}`, 'Dry it over night.');
    expect(list()[length]).toBe('Dry it over night.');
    fireEvent.click(screen.getByLabelText(`Remove: Caution ${length + 1}`));
    expect(list()).toHaveLength(length);
  });
});
