// @vitest-environment jsdom
import { cleanup, fireEvent, render, screen } from '@testing-library/react';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import demoText from '../../../assets/examples/demo.json?raw';
import { parseProject } from '../../../core/index.ts';
import { NumberField } from '../../../renderer/fields/NumberField.tsx';
import { dropDrafts } from '../../../renderer/store/drafts.ts';
import type { Path } from '../../../renderer/store/path.ts';
import { valueAt } from '../../../renderer/store/path.ts';
import { currentProject, loadProject, projectStore, undo } from '../../../renderer/store/project.ts';
import { runningFields, sectionFields, zoneFields } from '../../../renderer/strings.ts';

const rootPath: Path = ['revisions', 2, 'screw', 'sections', 2, 'rootDiameterEndMm'];
const rootSpec = sectionFields.find(({ key }) => key === 'rootDiameterEndMm');
if (!rootSpec) throw new Error('the table of sections has a root diameter');

const value = (path: Path) => valueAt(currentProject(), path);
const steps = () => projectStore.getState().history?.past.map(({ label }) => label);

function show(path: Path, spec = rootSpec, disabled = false) {
  if (!spec) throw new Error('no spec');
  render(<NumberField path={path} spec={spec} disabled={disabled} />);
  return screen.getByRole('textbox') as HTMLInputElement;
}

const type = (input: HTMLInputElement, text: string) => fireEvent.change(input, { target: { value: text } });
const press = (input: HTMLInputElement, key: string, more = {}) => fireEvent.keyDown(input, { key, ...more });

beforeEach(() => {
  const demo = parseProject(demoText);
  if (!demo.ok) throw new Error('the demo is a good project');
  loadProject(demo.value, { handle: null, name: 'demo.json' });
});
afterEach(() => {
  cleanup();
  dropDrafts([]);
});

describe('taking over', () => {
  test.each([
    ['9.5', 9.5],
    ['9,5', 9.5],
    ['0.95 cm', 9.5],
    ['3/8 in', 9.525],
    ['9500 µm', 9.5],
  ])('%s becomes %d mm on Enter, as one named step', (typed, expected) => {
    const input = show(rootPath);
    type(input, typed);
    expect(value(rootPath)).toBe(10.4);
    press(input, 'Enter');
    expect(value(rootPath)).toBe(expected);
    expect(input.value).toBe(String(expected));
    expect(steps()).toEqual(['Root Ø end']);
    undo();
    expect(value(rootPath)).toBe(10.4);
  });

  test('leaving the field takes over too; Escape restores', () => {
    const input = show(rootPath);
    type(input, '9');
    fireEvent.blur(input);
    expect(value(rootPath)).toBe(9);
    type(input, '7');
    press(input, 'Escape');
    expect(input.value).toBe('9');
    fireEvent.blur(input);
    expect(value(rootPath)).toBe(9);
  });

  test('temperatures and speeds are read in their own units', () => {
    const spec = runningFields.find(({ key }) => key === 'process.screwSpeedRpm');
    const speed = show(['process', 'screwSpeedRpm'], spec);
    type(speed, '0.5 rev/s');
    press(speed, 'Enter');
    expect(value(['process', 'screwSpeedRpm'])).toBe(30);
    cleanup();
    const path = ['revisions', 2, 'barrel', 'zones', 2, 'setTempC'];
    const set = show(path, zoneFields.setTempC);
    type(set, '374 F');
    press(set, 'Enter');
    expect(value(path)).toBe(190);
  });
});

describe('refusing', () => {
  test.each([
    ['12 rpm', /rotation/],
    ['abc', /number/],
    ['-4', /at least|more|from|least|1/i],
    ['5000', /200/],
  ])('%s is told at the field with what is allowed, and stays typed', (typed, words) => {
    const input = show(rootPath);
    type(input, typed);
    press(input, 'Enter');
    fireEvent.blur(input);
    expect(input.value).toBe(typed);
    expect(input.getAttribute('aria-invalid')).toBe('true');
    const alert = screen.getByRole('alert');
    expect(alert.id).toBe(input.getAttribute('aria-describedby'));
    expect(alert.textContent).toMatch(words);
    expect(value(rootPath)).toBe(10.4);
    expect(steps()).toEqual([]);
  });

  test('what was typed survives when the field leaves the screen and comes back', () => {
    type(show(rootPath), '99 furlongs');
    cleanup();
    expect(show(rootPath).value).toBe('99 furlongs');
  });

  test('two numbers that fit only together are taken over together', () => {
    const at = (zone: number, key: string): Path => ['revisions', 2, 'barrel', 'zones', zone, key];
    const end = show(at(0, 'endMm'), zoneFields.endMm);
    type(end, '46');
    press(end, 'Enter');
    expect(value(at(0, 'endMm'))).toBe(44);
    cleanup();
    const start = show(at(1, 'startMm'), zoneFields.startMm);
    type(start, '46');
    press(start, 'Enter');
    expect([value(at(0, 'endMm')), value(at(1, 'startMm'))]).toEqual([46, 46]);
  });
});

describe('stepping', () => {
  test('arrows step, Shift by ten, and a run of steps is undone as one', () => {
    const input = show(rootPath);
    press(input, 'ArrowUp');
    press(input, 'ArrowUp');
    press(input, 'ArrowDown', { shiftKey: true });
    expect(value(rootPath)).toBe(9.6);
    undo();
    expect(value(rootPath)).toBe(10.4);
  });

  test('a locked field shows its value and takes nothing', () => {
    const input = show(rootPath, rootSpec, true);
    press(input, 'ArrowUp');
    expect(input.readOnly).toBe(true);
    expect(value(rootPath)).toBe(10.4);
  });
});
