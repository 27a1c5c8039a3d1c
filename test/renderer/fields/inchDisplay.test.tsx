// @vitest-environment jsdom
import { act, cleanup, fireEvent, render, screen } from '@testing-library/react';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import demoText from '../../../assets/examples/demo.json?raw';
import { parseProject } from '../../../core/index.ts';
import { HelpLine } from '../../../renderer/fields/HelpLine.tsx';
import { NumberField } from '../../../renderer/fields/NumberField.tsx';
import { sketchOf } from '../../../renderer/fields/sketches/Sketch.tsx';
import { sketchTable } from '../../../renderer/fields/sketches/sketchTable.ts';
import type { FieldSpec } from '../../../renderer/fields/spec.ts';
import { TypedNumber } from '../../../renderer/fields/TypedNumber.tsx';
import { showUnits } from '../../../renderer/look.ts';
import { dropDrafts } from '../../../renderer/store/drafts.ts';
import { type Path, valueAt } from '../../../renderer/store/path.ts';
import { currentProject, loadProject, projectStore } from '../../../renderer/store/project.ts';
import { decimalOf, setView, viewStore } from '../../../renderer/store/view.ts';
import * as strings from '../../../renderer/strings.ts';

const boreSpec = strings.barrelFields.find(({ key }) => key === 'barrel.boreDiameterMm') as FieldSpec;
const bore: Path = ['revisions', 2, 'barrel', 'boreDiameterMm'];
const value = (path: Path) => valueAt(currentProject(), path);
const steps = () => projectStore.getState().history?.past.length;

function show(path = bore, spec = boreSpec) {
  render(<NumberField path={path} spec={spec} disabled={false} />);
  return screen.getByRole('textbox') as HTMLInputElement;
}

function enter(input: HTMLInputElement, text: string) {
  fireEvent.change(input, { target: { value: text } });
  fireEvent.keyDown(input, { key: 'Enter' });
}

beforeEach(() => {
  const demo = parseProject(demoText);
  if (!demo.ok) throw new Error('the demo is a good project');
  loadProject(demo.value, { handle: null, name: 'demo.json' });
  setView({ units: 'inch' });
});
afterEach(() => {
  cleanup();
  dropDrafts([]);
  setView({ units: 'metric', decimal: '.', helpFor: null });
});

describe('fields in inches', () => {
  test('show inches, read bare numbers as inches, and millimetres where they are named', () => {
    const input = show();
    expect(input.value).toBe('0.5512');
    expect(document.querySelector('.row .unit')?.textContent).toBe('in');
    enter(input, '0.625');
    expect(value(bore)).toBe(15.875);
    enter(input, '16 mm');
    expect(value(bore)).toBe(16);
    expect(input.value).toBe('0.6299');
  });

  test('a number that is only looked at, or typed as it is shown, stays what it was', () => {
    const input = show();
    fireEvent.focus(input);
    fireEvent.blur(input);
    enter(input, '0.5512');
    expect(value(bore)).toBe(14);
    expect(steps()).toBe(0);
    act(() => showUnits('metric'));
    expect(input.value).toBe('14');
  });

  test('step on round thousandths, and back', () => {
    const input = show();
    fireEvent.keyDown(input, { key: 'ArrowUp' });
    expect(input.value).toBe('0.5562');
    fireEvent.keyDown(input, { key: 'ArrowDown' });
    expect(value(bore)).toBeCloseTo(14, 2);
  });

  test('a refusal names the range in inches', () => {
    const input = show();
    enter(input, '9');
    expect(screen.getByRole('alert').textContent).toMatch(/0\.1181 to 7\.874 in/);
    expect(value(bore)).toBe(14);
  });

  test('what waits to be put right keeps the unit it was typed in', () => {
    act(() => showUnits('metric'));
    const input = show();
    enter(input, '900');
    act(() => showUnits('inch'));
    expect(input.value).toBe('900 mm');
  });

  test('leave temperatures alone', () => {
    const spec = strings.nozzleFields.find(({ key }) => key === 'nozzle.setTempC') as FieldSpec;
    const path = ['revisions', 2, 'nozzle', 'setTempC'];
    expect(show(path, spec).value).toBe(String(value(path)));
  });

  test('numbers of dialogs follow', () => {
    const taken: number[] = [];
    render(<TypedNumber label="Way" value={254} unit="mm" take={(next) => taken.push(next)} />);
    const input = screen.getByLabelText('Way') as HTMLInputElement;
    expect(input.value).toBe('10');
    enter(input, '2');
    expect(taken).toEqual([50.8]);
  });

  test('the choice is kept on this machine and not in the project', () => {
    showUnits('inch');
    expect(localStorage.getItem('augerwright.units')).toBe('inch');
    expect(JSON.stringify(currentProject())).not.toContain('inch');
    showUnits('metric');
    expect(localStorage.getItem('augerwright.units')).toBe('metric');
  });
});

describe('a decimal comma', () => {
  test('is that of the language', () => {
    expect([decimalOf('de'), decimalOf('en-GB'), decimalOf('fr-CA'), decimalOf('ar-EG')]).toEqual([',', '.', ',', '.']);
  });

  test('is shown and read, and a point is read too', () => {
    setView({ units: 'metric', decimal: ',' });
    const path: Path = ['revisions', 2, 'screw', 'sections', 2, 'rootDiameterEndMm'];
    const spec = strings.sectionFields.find(({ key }) => key === 'rootDiameterEndMm') as FieldSpec;
    const input = show(path, spec);
    expect(input.value).toBe('10,4');
    enter(input, '9,125');
    expect(value(path)).toBe(9.125);
    expect(input.value).toBe('9,125');
    fireEvent.keyDown(input, { key: 'ArrowUp' });
    expect(value(path)).toBe(9.225);
    enter(input, '9.5');
    expect(value(path)).toBe(9.5);
    enter(input, '1.234');
    expect(screen.getByRole('alert').textContent).toMatch(/thousands/);
    expect(value(path)).toBe(9.5);
  });
});

describe('help', () => {
  test('says what is allowed and how far a step goes, in the shown unit, with a drawing', () => {
    const input = show();
    render(<HelpLine />);
    fireEvent.focus(input);
    const line = document.querySelector('.help-line');
    expect(line?.textContent).toMatch(/Allowed: 0\.1181 to 7\.874 in/);
    expect(line?.textContent).toMatch(/step by 0\.005 in/);
    expect(screen.getByRole('img').getAttribute('aria-label')).toMatch(/Bore/);
    act(() => setView({ units: viewStore.getState().units === 'inch' ? 'metric' : 'inch' }));
    expect(line?.textContent).toMatch(/Allowed: 3 to 200 mm/);
  });

  test('every geometric number has a drawing of its dimension', () => {
    const { sectionFields, zoneFields, pieceFields, ...rest } = strings;
    const below = (prefix: string, specs: readonly FieldSpec[]) =>
      specs.map((spec) => ({ ...spec, key: `${prefix}.${spec.key}` }));
    const all: FieldSpec[] = [
      ...below('screw.sections', sectionFields),
      ...below('barrel.zones', Object.values(zoneFields)),
      ...below('nozzle.segments', pieceFields),
      ...Object.values(rest).flatMap((specs) => (Array.isArray(specs) ? (specs as FieldSpec[]) : [])),
    ];
    const geometric = all.filter(({ unit, key }) => unit === 'mm' || (unit === '°' && /^(screw|hopper)/.test(key)));
    expect(geometric.length).toBeGreaterThan(35);
    expect(geometric.filter(({ key }) => sketchOf(key.split('.')) === null).map(({ key }) => key)).toEqual([]);
    expect(sketchOf(['revisions', 0, 'screw', 'sections', 2, 'starts'])).toBe('screw.sections.starts');
    expect(Object.keys(sketchTable).filter((name) => !all.some(({ key }) => name.endsWith(key)))).toEqual([]);
  });
});
