// @vitest-environment jsdom
import { act, cleanup, fireEvent, render, screen, waitFor } from '@testing-library/react';
import { afterEach, beforeEach, expect, test } from 'vitest';
import demoText from '../../../assets/examples/demo.json?raw';
import plaText from '../../../assets/materials/pla.json?raw';
import waxText from '../../../assets/materials/wax.json?raw';
import { type Project, parseProject, validateDesign } from '../../../core/index.ts';
import { setBridge } from '../../../renderer/bridge.ts';
import { commandOf } from '../../../renderer/commands.ts';
import { Discard } from '../../../renderer/panels/Discard.tsx';
import { NewProject } from '../../../renderer/panels/newProject/NewProject.tsx';
import { Templates } from '../../../renderer/panels/templates/Templates.tsx';
import { setValue } from '../../../renderer/store/edits.ts';
import {
  activeRevision,
  applyEdit,
  currentProject,
  isUnsaved,
  loadProject,
  projectStore,
  undo,
} from '../../../renderer/store/project.ts';
import { setView, viewStore } from '../../../renderer/store/view.ts';

const now = (): Project => currentProject() as Project;
const steps = () => projectStore.getState().history?.past.map(({ label }) => label) ?? [];
/** A button by its words; quicker than by role. */
function button(name: string, index = 0): HTMLElement {
  const found = [...document.querySelectorAll<HTMLElement>('button')].filter((one) => one.textContent === name)[index];
  if (!found) throw new Error(`no button is called ${name}`);
  return found;
}

const texts: Readonly<Record<string, string>> = { pla: plaText, wax: waxText };
const library = {
  listMaterials: async () => ({ ok: true, value: Object.keys(texts).map((id) => ({ id, title: id, note: '' })) }),
  readMaterial: async (id: string) => ({ ok: true, value: { name: id, text: texts[id] } }),
};

// jsdom has no CSS.escape, which the widget library asks for when a dialog opens.
Object.assign(globalThis, { CSS: { escape: (text: string) => text } });

beforeEach(() => {
  const demo = parseProject(demoText);
  if (!demo.ok) throw new Error('the demo is a good project');
  loadProject(demo.value, { handle: 'abc', name: 'demo.json' });
  setBridge(library as never);
});
afterEach(() => {
  cleanup();
  setBridge(null);
  setView({ dialog: 'none', notice: null });
});

test('a template goes into the open revision as one step, drawn before, valid after', () => {
  render(<Templates />);
  act(() => setView({ dialog: 'templates' }));
  expect(document.querySelectorAll('svg.screw-drawing')).toHaveLength(5);
  const before = activeRevision(now()).screw;
  fireEvent.click(button('Put into C', 2));
  const { screw } = activeRevision(now());
  expect(screw.sections.at(-1)).toMatchObject({ kind: 'plain', name: 'plain tip' });
  expect([screw.steel, screw.shank, screw.radialClearanceMm]).toEqual([
    before.steel,
    before.shank,
    before.radialClearanceMm,
  ]);
  expect(validateDesign(now(), 'C').ok).toBe(true);
  expect(steps()).toEqual(['Template: Two-stage with plain tip']);
  expect(viewStore.getState().dialog).toBe('none');
  undo();
  expect(activeRevision(now()).screw).toBe(before);
});

test('or into a branch, which a locked revision leaves as the only way', () => {
  applyEdit(setValue(['activeRevision'], 'A'), { label: 'show' });
  render(<Templates />);
  act(() => setView({ dialog: 'templates' }));
  expect(button('Put into A').hasAttribute('disabled')).toBe(true);
  const kept = now().revisions[0];
  fireEvent.click(button('As a new revision', 4));
  expect(now().revisions[0]).toBe(kept);
  expect(activeRevision(now())).toMatchObject({ id: 'D', parent: 'A', locked: false });
  expect(activeRevision(now()).screw.sections.every((s) => s.kind === 'flighted' && s.starts === 2)).toBe(true);
  expect(steps().at(-1)).toBe('Template: Double start, as revision D');
});

test('a new project is asked for, refused where it cannot be made, and then open and not saved', async () => {
  render(<NewProject />);
  await act(() => commandOf('new').perform());
  await waitFor(() => screen.getByLabelText('Side view of the first screw'));
  expect(screen.getByText(/^0\.5 % of the bore/)).toBeTruthy();
  const enter = (label: string, typed: string) => {
    const input = screen.getByLabelText(label);
    fireEvent.change(input, { target: { value: typed } });
    fireEvent.blur(input);
  };
  enter('Bore Ø', '1 in');
  enter('Orifice Ø', '20 mm');
  expect(document.querySelector('[role=alert]')?.textContent).toMatch(/Allowed: 0\.254 to 12\.7 mm/);
  expect(button('Create').hasAttribute('disabled')).toBe(true);
  enter('Orifice Ø', '2');
  enter('Name', 'Garden head');
  await act(async () => void fireEvent.change(screen.getByLabelText('Granulate'), { target: { value: 'wax' } }));
  fireEvent.click(button('Create'));
  expect(now()).toMatchObject({ name: 'Garden head', invented: false });
  expect(now().materials.map(({ id }) => id)).toEqual(['wax']);
  expect(activeRevision(now()).barrel.boreDiameterMm).toBe(25.4);
  expect(validateDesign(now(), 'A').ok).toBe(true);
  expect(isUnsaved(projectStore.getState())).toBe(true);
  expect(projectStore.getState().file).toEqual({ handle: null, name: '' });
  expect(steps()).toEqual([]);
});

test('a new project asks first where changes would be lost', async () => {
  applyEdit(setValue(['process', 'screwSpeedRpm'], 11), { label: 'Screw speed' });
  render(<Discard />);
  await act(() => commandOf('new').perform());
  expect(viewStore.getState().dialog).toBe('discard');
  await act(async () => void fireEvent.click(button('Go on without saving')));
  await waitFor(() => expect(viewStore.getState().dialog).toBe('new'));
  expect(now().process.screwSpeedRpm).toBe(11);
});
