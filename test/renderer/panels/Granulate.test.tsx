// @vitest-environment jsdom
import { cleanup, fireEvent, render, screen, waitFor, within } from '@testing-library/react';
import type { ReactNode } from 'react';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import demoText from '../../../assets/examples/demo.json?raw';
import hdpeText from '../../../assets/materials/hdpe.json?raw';
import phbText from '../../../assets/materials/phb.json?raw';
import { checkProject, parseMaterialText, parseProject, type Result, type Sourced } from '../../../core/index.ts';
import { type Bridge, type ImportedText, setBridge } from '../../../renderer/bridge.ts';
import { fitStore } from '../../../renderer/fit/store.ts';
import { addFromLibrary } from '../../../renderer/library.ts';
import { About } from '../../../renderer/panels/granulate/About.tsx';
import { Cautions } from '../../../renderer/panels/granulate/Cautions.tsx';
import { Colours } from '../../../renderer/panels/granulate/Colours.tsx';
import { Known } from '../../../renderer/panels/granulate/Known.tsx';
import { Laws } from '../../../renderer/panels/granulate/Laws.tsx';
import { MaterialList } from '../../../renderer/panels/granulate/MaterialList.tsx';
import { MeltFlow } from '../../../renderer/panels/granulate/MeltFlow.tsx';
import { exportMaterial, importMaterial } from '../../../renderer/panels/granulate/materialFiles.ts';
import { PartSwitch } from '../../../renderer/panels/granulate/PartSwitch.tsx';
import { SourcedFields } from '../../../renderer/panels/granulate/SourcedField.tsx';
import { type PlacedMaterial, useMaterial } from '../../../renderer/panels/granulate/useMaterial.ts';
import { dropDrafts } from '../../../renderer/store/drafts.ts';
import { setValue } from '../../../renderer/store/edits.ts';
import { type Path, valueAt } from '../../../renderer/store/path.ts';
import { applyEdit, currentProject, loadProject, projectStore, undo } from '../../../renderer/store/project.ts';
import { setView, viewStore } from '../../../renderer/store/view.ts';
import { thermalFields } from '../../../renderer/strings.ts';
import { memoryBridge } from '../../helpers/memoryBridge.ts';

// Drawing needs a canvas, which this environment lacks; the curves themselves are tested in core.
vi.mock('../../../renderer/plots/Chart.tsx', () => ({ Chart: () => null, axis: () => ({}) }));

// Menus find their entries by escaped ids, and this environment has no CSS object.
vi.stubGlobal('CSS', { escape: (name: string) => name.replaceAll('"', '\\"') });

const value = (...path: Path) => valueAt(currentProject(), path);
const steps = () => projectStore.getState().history?.past.map(({ label }) => label);
const notice = () => viewStore.getState().notice;
const choose = (name: string, option: string) =>
  fireEvent.change(screen.getByLabelText(name, { selector: 'select' }), { target: { value: option } });
const enter = (name: string, typed: string) => {
  const input = screen.getByLabelText(name, { selector: 'input, textarea' });
  fireEvent.change(input, { target: { value: typed } });
  fireEvent.blur(input);
  return input;
};

type Groups = (placed: PlacedMaterial) => ReactNode;

function Shown({ groups }: { readonly groups: Groups }) {
  const placed = useMaterial();
  return placed && groups(placed);
}

/** Shows one group of the panel alone: the whole of it takes this environment too long. */
const show = (groups: Groups) => render(<Shown groups={groups} />);

let saved: ReadonlyMap<string, Uint8Array>;

/** The host, with a file that is picked for import. */
function serve(picked: Result<ImportedText | null> = { ok: true, value: null }): void {
  const start = { handle: null, path: null, name: 'demo.json', text: demoText };
  const library = [
    { id: 'hdpe', title: 'HDPE, generic', note: '', text: hdpeText },
    { id: 'phb', title: 'PHB', note: '', text: phbText },
    { id: 'torn', title: 'Torn', note: '', text: '{"id":' },
  ];
  const memory = memoryBridge(start, [], library);
  saved = memory.saved;
  setBridge({ ...memory.bridge, importText: async () => picked } satisfies Bridge);
}

beforeEach(() => {
  const demo = parseProject(demoText);
  if (!demo.ok) throw new Error('the demo is a good project');
  loadProject(demo.value, { handle: null, name: 'demo.json' });
  serve();
});

afterEach(() => {
  cleanup();
  dropDrafts([]);
  setBridge(null);
  setView({ dialog: 'none', notice: null });
});

describe('the library', () => {
  const list = () => show(() => <MaterialList invented={false} />);

  test('a material is copied into the project as one named step, and can then be run', async () => {
    list();
    fireEvent.click(screen.getByLabelText('Add from library'));
    const entry = (await screen.findByText('HDPE, generic')).closest('[role="menuitem"]') as HTMLElement;
    expect(entry).not.toBeNull();
    await screen.findByText(/cannot predict: .*pumping.*strand/);
    expect(entry.textContent).toMatch(/all predictable, \d+ from doubtful|cannot predict: /);
    fireEvent.click(entry);
    await waitFor(() => expect(steps()).toEqual(['Add HDPE, generic']));
    choose('Granulate', 'hdpe');
    expect(value('revisions', 2, 'materialId')).toBe('hdpe');
    expect(within(screen.getByLabelText('Materials of this project')).getByText(/run by C$/)).toBeTruthy();
    undo();
    undo();
    expect(currentProject()).toEqual(JSON.parse(demoText));
  });

  test('a damaged file adds nothing and says why', async () => {
    await addFromLibrary('torn');
    expect(steps()).toEqual([]);
    expect(notice()).toMatchObject({ kind: 'bad', text: expect.stringMatching(/line 1/i) });
  });

  test('what is run cannot be removed; a copy can', () => {
    list();
    fireEvent.click(screen.getByLabelText(/^Actions: Pale wood/));
    const act = (name: string) => screen.getByText(name).closest('[role="menuitem"]') as HTMLElement;
    expect(act('Remove').getAttribute('aria-disabled')).toBe('true');
    fireEvent.click(act('Duplicate'));
    expect(value('materials', 1, 'id')).toBe('pale-wood-micro-2');
    const [, copy] = screen.getByLabelText('Materials of this project').querySelectorAll('li');
    expect(copy?.textContent).toMatch(/copy.*not used/);
    fireEvent.click(copy?.querySelector('button') as HTMLElement);
    fireEvent.click(act('Remove'));
    expect(value('materials', 1)).toBeUndefined();
  });
});

describe('files of single materials', () => {
  test('what is exported can be imported again, beside the first', async () => {
    await exportMaterial('pale-wood-micro');
    const text = new TextDecoder().decode(saved.get('pale-wood-micro.material.json'));
    expect(parseMaterialText(text)).toEqual({ ok: true, value: value('materials', 0) });
    serve({ ok: true, value: { name: 'mine.json', text } });
    await importMaterial();
    expect(value('materials', 1)).toEqual({ ...(value('materials', 0) as object), id: 'pale-wood-micro-2' });
    expect(steps()).toEqual([expect.stringMatching(/^Import Pale wood/)]);
  });

  test.each([
    ['broken off', hdpeText.slice(0, 400), /line \d+/i],
    ['of a wrong value', hdpeText.replace(/("meltDensityKgM3":\s*\{\s*"value":\s*)\d+/, '$1-5'), /meltDensityKgM3/],
    ['of a project', demoText, /material/],
  ])('a file %s adds nothing and says where', async (_, text, place) => {
    serve({ ok: true, value: { name: 'bad.json', text } });
    await importMaterial();
    expect(steps()).toEqual([]);
    expect(notice()).toMatchObject({ kind: 'bad', text: expect.stringMatching(place) });
    expect(notice()?.text).toContain('bad.json');
  });

  test('one without a viscosity says what cannot be predicted, and offers the fit', async () => {
    serve({ ok: true, value: { name: 'phb.json', text: phbText } });
    await importMaterial();
    expect(notice()?.text).toMatch(/not known.*pumping, residence.*Fit/);
    applyEdit(setValue(['revisions', 2, 'materialId'], 'phb'), { label: 'run it' });
    show((placed) => <Known {...placed} />);
    fireEvent.click(within(screen.getByRole('status')).getByText(/Fit viscosity/));
    expect(viewStore.getState().dialog).toBe('fit');
    expect(fitStore.getState().materialId).toBe('phb');
  });
});

describe('what is known', () => {
  test('a name leads to its field; one that is not given leads to its box', () => {
    show((placed) => (
      <>
        <Known {...placed} />
        <SourcedFields root={placed.root} specs={thermalFields.slice(0, 1)} />
        <PartSwitch {...placed} part="unconfinedStrengthPa" />
      </>
    ));
    fireEvent.click(screen.getByText(/Pumping/));
    fireEvent.click(screen.getByText('melt density'));
    expect(document.activeElement).toBe(screen.getByLabelText('Melt density'));
    const box = screen.getByLabelText('Cohesion known') as HTMLInputElement;
    if (box.checked) fireEvent.click(box);
    fireEvent.click(screen.getByText(/Feeding/));
    fireEvent.click(screen.getByText('unconfined strength (not given)'));
    expect(document.activeElement).toBe(box);
  });
});

describe('the law', () => {
  beforeEach(() => show((placed) => <MeltFlow {...placed} />));

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
    show(({ root }) => <SourcedFields root={root} specs={thermalFields.slice(0, 1)} />);
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

  test('another number than the one seen is no longer called seen, in one step that undo takes back', () => {
    applyEdit(setValue([...density, 'status'], 'seen'), { label: 'seen' });
    const before = stored();
    enter('Melt density', String(before.value + 1));
    expect(stored()).toMatchObject({ value: before.value + 1, status: 'estimated', low: before.low });
    expect(stored().source).toContain(`changed from ${before.value} (seen: ${before.source}`);
    expect(steps()).toEqual(['seen', 'Melt density']);
    undo();
    expect(stored()).toEqual(before);
    enter('Melt density', String(before.value));
    expect(stored()).toEqual(before);
  });
});

test('a material that locked revisions run says that editing it changes them too', () => {
  show((placed) => <About {...placed} />);
  expect(screen.getByText(/A, B is|A, B are/).textContent).toMatch(/locked.*duplicate the material/);
});

describe('aging and cautions', () => {
  const law = (index: number) => value('materials', 0, 'degradation', index) as Record<string, unknown>;

  test('changes and colours come and go by named steps', () => {
    show((placed) => (
      <>
        <Laws {...placed} />
        <Colours {...placed} />
      </>
    ));
    fireEvent.click(screen.getByText('Add a change'));
    fireEvent.click(screen.getByText('Add a colour'));
    fireEvent.click(screen.getByLabelText('Actions: Colour 1'));
    fireEvent.click(screen.getByText('Remove'));
    choose('Colour follows', '');
    const lightness = enter('Colour 2, L*', '140');
    const said = document.getElementById(lightness.getAttribute('aria-describedby') ?? '');
    // a sentence in a cell of the table would be one word wide
    expect(said?.closest('table')).toBeNull();
    expect(said?.textContent).toMatch(/Colour 2, L\*: .*0 to 100/);
    expect(steps()).toEqual(['Add a change', 'Add a colour', 'Remove: Colour', 'Colour follows']);
    expect(checkProject(currentProject()).ok).toBe(true);
  });

  test('each kind of change has fields of its own; switching is one named step', () => {
    const { length } = value('materials', 0, 'degradation') as unknown[];
    applyEdit(setValue(['materials', 0, 'degradation'], [law(0)]), { label: 'one' });
    show((placed) => <Laws {...placed} />);
    const chosen = (kind: string) => choose('Kind of change', kind);
    chosen('scission');
    expect(law(0)).toMatchObject({ repeatUnitMassKgPerMol: { status: 'estimated' } });
    fireEvent.click(screen.getByLabelText('Molar mass of fresh chains known'));
    enter('Fresh chains, kg/mol', '80');
    expect(law(0)).toMatchObject({ initialMolarMassKgPerMol: { value: 80 } });
    chosen('twoStep');
    enter('Second step, solid left', '0.3');
    expect(law(0)).toMatchObject({ kind: 'twoStep', second: { solidYield: { value: 0.3 } } });
    chosen('lag');
    expect(screen.getByLabelText('Lag at reference')).toBeTruthy();
    expect(screen.queryByLabelText('Order')).toBeNull();
    chosen('order');
    expect(screen.getByLabelText('Order')).toBeTruthy();
    expect(steps()?.filter((step) => step.startsWith('Kind'))).toEqual(
      ['chains break', 'two steps', 'with a lag', 'by order'].map((kind) => `Kind of change: ${kind}`),
    );
    expect(length).toBeGreaterThan(0);
    expect(checkProject(currentProject()).ok).toBe(true);
  });

  test('the colour follows a renamed change; a taken name is refused; another change takes the colour over', () => {
    show((placed) => <Laws {...placed} />);
    const names = () => screen.getAllByLabelText('Short name') as HTMLInputElement[];
    const rename = (index: number, typed: string) => {
      fireEvent.change(names()[index] as HTMLElement, { target: { value: typed } });
      fireEvent.blur(names()[index] as HTMLElement);
    };
    fireEvent.click(screen.getByText('Add a change'));
    const driver = names().findIndex(({ value: id }) => id === value('materials', 0, 'colourLaw'));
    const other = names().length - 1;
    rename(driver, 'darkening');
    expect(value('materials', 0, 'colourLaw')).toBe('darkening');
    rename(other, 'darkening');
    expect(notice()?.text).toContain('darkening');
    expect(law(other).id).not.toBe('darkening');
    const drive = screen.getAllByText('Let it drive the colour').at(-1) as HTMLElement;
    fireEvent.click(drive);
    expect(value('materials', 0, 'colourLaw')).toBe(law(other).id);
  });

  test('cautions are added at the end, edited and removed', () => {
    show((placed) => <Cautions {...placed} />);
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
