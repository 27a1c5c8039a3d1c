// @vitest-environment jsdom
import { act, cleanup, fireEvent, render, screen } from '@testing-library/react';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import demoText from '../../../assets/examples/demo.json?raw';
import { parseProject } from '../../../core/index.ts';
import { NumberField } from '../../../renderer/fields/NumberField.tsx';
import type { FieldSpec } from '../../../renderer/fields/spec.ts';
import { dropDrafts } from '../../../renderer/store/drafts.ts';
import type { Path } from '../../../renderer/store/path.ts';
import { valueAt } from '../../../renderer/store/path.ts';
import { currentProject, loadProject, projectStore, undo } from '../../../renderer/store/project.ts';
import {
  barrelFields,
  motorFields,
  nozzleFields,
  runningFields,
  sectionFields,
  zoneFields,
} from '../../../renderer/strings.ts';

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
    ['3/8 in.', 9.525],
    ['3/8"', 9.525],
    ['Ø 9.5', 9.5],
  ])('%s becomes %d mm on Enter, as one named step', (typed, expected) => {
    const input = show(rootPath);
    type(input, typed);
    expect(value(rootPath)).toBe(10.4);
    press(input, 'Enter');
    expect(value(rootPath)).toBe(expected);
    expect(input.value).toBe(String(expected));
    expect(steps()).toEqual(['Section 3, Root Ø end']);
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

test.each([
  ['revisions/2/barrel/boreDiameterMm', '1 1/2"', 38.1, barrelFields],
  ['revisions/2/barrel/boreDiameterMm', '1-1/2 in', 38.1, barrelFields],
  ['revisions/2/barrel/boreDiameterMm', '1,5 in', 38.1, barrelFields],
  ['process/screwSpeedRpm', '12 rpm', 12, runningFields],
  ['revisions/2/barrel/pressureLimitMPa', '200 bar', 20, barrelFields],
  ['revisions/2/nozzle/setTempC', '190 C', 190, nozzleFields],
  ['revisions/2/nozzle/setTempC', '190 deg C', 190, nozzleFields],
  ['revisions/2/drive/motorCurve/0/torqueNm', '0.5 Nm', 0.5, motorFields],
  ['revisions/2/drive/motorCurve/0/torqueNm', '0.5 N.m', 0.5, motorFields],
])('%s takes %s as %d', (key, typed, expected, specs: readonly FieldSpec[]) => {
  const path = key.split('/').map((part) => (/^\d+$/.test(part) ? Number(part) : part));
  const input = show(
    path,
    specs.find((spec) => key.endsWith(spec.key.split('.').at(-1) ?? '')),
  );
  type(input, typed);
  press(input, 'Enter');
  expect(value(path)).toBe(expected);
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

  test('steps end at the allowed range', () => {
    const path: Path = ['revisions', 2, 'screw', 'sections', 2, 'starts'];
    const input = show(
      path,
      sectionFields.find(({ key }) => key === 'starts'),
    );
    press(input, 'ArrowUp', { shiftKey: true });
    expect(value(path)).toBe(6);
    press(input, 'ArrowDown', { shiftKey: true });
    expect(value(path)).toBe(1);
  });

  test('the small buttons step, repeat while held, and are no stops of the tab key', () => {
    vi.useFakeTimers();
    show(rootPath);
    const [more, less] = [...document.querySelectorAll<HTMLButtonElement>('.stepper button')];
    if (!more || !less) throw new Error('a field has two small buttons');
    fireEvent.pointerDown(more, { button: 0 });
    expect(value(rootPath)).toBe(10.5);
    act(() => void vi.advanceTimersByTime(700));
    fireEvent.pointerUp(more);
    const held = value(rootPath) as number;
    expect(held).toBeGreaterThan(10.7);
    act(() => void vi.advanceTimersByTime(2000));
    expect(value(rootPath)).toBe(held);
    fireEvent.pointerDown(less, { button: 0 });
    fireEvent.pointerUp(less);
    expect(value(rootPath)).toBeCloseTo(held - 0.1, 9);
    expect([more.tabIndex, less.tabIndex]).toEqual([-1, -1]);
    vi.useRealTimers();
  });

  test('a locked field shows its value and takes nothing', () => {
    const input = show(rootPath, rootSpec, true);
    press(input, 'ArrowUp');
    expect(input.readOnly).toBe(true);
    expect(document.querySelector('.stepper')).toBeNull();
    expect(value(rootPath)).toBe(10.4);
  });
});
