import { strFromU8 } from 'fflate';
import { describe, expect, test } from 'vitest';
import { handoverSource, runHandover } from '../../../core/handover/run.ts';
import { partRows, partsTree } from '../../../core/handover/shop/partsList.ts';
import { sheetHtml, tableCsv } from '../../../core/handover/shop/sheet.ts';
import { partsListModule, shopSheetModule, shopTableModule } from '../../../core/handover/shop/shopModules.ts';
import type { HandoverModule } from '../../../core/handover/types.ts';
import { changeGears, trainText } from '../../../core/make/changeGears.ts';
import { predict } from '../../../core/prediction/predict.ts';
import type { Project } from '../../../core/project/schema.ts';
import { flightedAt } from '../../helpers/edgeProjects.ts';
import { expectOk, loadDesign, loadExample, revisionAt } from '../../helpers/projects.ts';
import { solidTools } from './tools.ts';

const inch = 25.4e-3;

async function texts(
  module: HandoverModule,
  values: Record<string, unknown>,
  project: Project,
  id = project.activeRevision,
) {
  const made = await handoverSource(module, project, [id], '2026-05-04', (design) =>
    predict(design, { curvePoints: 0, stationsPerTurn: 4 }),
  );
  const result = await runHandover(module, expectOk(made), values, solidTools);
  return expectOk(result).map(({ name, bytes }) => ({ name, text: strFromU8(bytes) }));
}

describe('change gears', () => {
  test('a simple train where one is exact', () => {
    const train = changeGears(2e-3, 3e-3, [20, 30, 40, 60]);
    expect(train && trainText(train)).toMatch(/^(20:30|40:60)$/);
    expect(train?.error).toBe(0);
  });

  test('a compound one where it is nearer, each wheel once', () => {
    const train = changeGears(14e-3, 3e-3, [20, 24, 30, 35, 40, 60, 70, 80]);
    expect(train?.error).toBe(0);
    const wheels = train?.pairs.flat() ?? [];
    expect(new Set(wheels).size).toBe(wheels.length);
    expect(wheels).toHaveLength(4);
    const [[a = 0, b = 1] = [], [c = 0, d = 1] = []] = train?.pairs ?? [];
    expect(((a * c) / (b * d)) * 3).toBeCloseTo(14, 12);
  });

  test('the 127 wheel brings millimetres out of an inch leadscrew exactly; without it the error is told', () => {
    const wheels = [40, 63];
    expect(changeGears(2e-3, inch / 8, [...wheels, 80, 127])?.error).toBe(0);
    const near = changeGears(2e-3, inch / 8, wheels);
    expect(near?.error).not.toBe(0);
    // 40:63 is the nearest: (40 / 63) of 3.175 mm
    expect(near?.error).toBeCloseTo((40 / 63) * (inch / 8) - 2e-3, 12);
  });

  test('no train from one wheel', () => {
    expect(changeGears(2e-3, 3e-3, [40])).toBeNull();
  });
});

describe('turning tables', () => {
  test('rows at every step and at both ends of a section, with the trade’s figures', async () => {
    const files = await texts(shopTableModule, { every: 20 }, loadExample('demo'), 'C');
    expect(files.map(({ name }) => name.replace(/^.*-turning-/, ''))).toEqual([
      'sections.csv',
      'stations.csv',
      'blank.csv',
    ]);
    const rows = (files[1]?.text ?? '')
      .split('\r\n')
      .slice(1)
      .filter(Boolean)
      .map((line) => line.split(','));
    expect(rows.map(([, z]) => Number(z))).toEqual([0, 20, 40, 55, 55, 60, 80, 100, 110, 110, 120, 140, 160]);
    // root 6.4 mm, lead 14 mm, clearance 0.1 mm in 14 mm: atan(14 / (6.4 pi)), 25.4 / 14, (13.8 - 6.4) / 2, (14 - 2) cos
    const helix = Math.atan(14 / (Math.PI * 6.4));
    const row = rows[0]?.map(Number) ?? [];
    expect(row[2]).toBe(6.4);
    expect(row[3]).toBeCloseTo(3.7, 6);
    expect(row[5]).toBeCloseTo(25.4 / 14, 3);
    expect(row[7]).toBeCloseTo((helix * 180) / Math.PI, 2);
    expect(row[12]).toBeCloseTo(1.2, 6);
    expect(row[13]).toBeCloseTo(12 * Math.cos(helix), 2);
    expect(files[0]?.text).toMatch(/exact/);
    const blank = (files[2]?.text ?? '').split('\r\n');
    expect(blank).toContain('0,-32,10,shank');
    expect(blank).toContain('32,0,13.8,crest of section 1');
  });

  test('numeric control gets feed, angles of the starts and taper; a varying lead no gears', async () => {
    const project = loadExample('demo');
    const revision = revisionAt(project, 2);
    Object.assign(flightedAt(revision, 1), { starts: 2, leadStartMm: 20, leadEndMm: 16 });
    const [sections] = await texts(shopTableModule, { lathe: 'controlled' }, project, 'C');
    const row = (sections?.text ?? '').split('\r\n')[2] ?? '';
    expect(row).toContain('"0, 180"');
    // lead falls evenly by 4 mm over 55 mm, so that a turn multiplies it by exp(-4/55): 20 (exp(-4/55) - 1) in the
    // first turn, which is 19.29 mm long, over which the root, growing by 4 mm, grows by as much
    expect(row.endsWith(',20,-1.403,1.403')).toBe(true);
    const [page] = await texts(shopSheetModule, { lathe: 'controlled' }, project, 'C');
    expect(page?.text).toContain('changes less from turn to turn');
    const [geared] = await texts(shopTableModule, {}, project, 'C');
    expect((geared?.text ?? '').split('\r\n')[2]).toContain('none: the lead varies');
  });

  test('the blank has the fillet between shank and first section, where there is one', async () => {
    const project = loadExample('demo');
    const blank = async () => (await texts(shopTableModule, {}, project, 'C'))[2]?.text ?? '';
    Object.assign(revisionAt(project, 2).screw.shank, { filletMm: 0.8 });
    expect(await blank()).toContain('32,0,10,shank; fillet R0.8 at this shoulder');
    Reflect.deleteProperty(revisionAt(project, 2).screw.shank, 'filletMm');
    expect(await blank()).not.toContain('fillet');
  });

  test('wheels that cannot be read are refused by name', async () => {
    const made = expectOk(
      await handoverSource(shopTableModule, loadExample('demo'), ['C'], '2026-05-04', () =>
        Promise.reject(new Error('no')),
      ),
    );
    for (const gears of ['20', '20 x 30', '5 300']) {
      const result = await runHandover(shopTableModule, made, { gears }, solidTools);
      expect(result.ok ? [] : result.issues.map(({ code }) => code)).toEqual(['gears-unreadable']);
    }
  });

  test('the sheet has the order of cutting, marked, and cautions', async () => {
    const [page] = await texts(shopSheetModule, {}, loadExample('demo'), 'C');
    expect(page?.name).toMatch(/\.html$/);
    expect(page?.text).toContain('Order of cutting (common practice)');
    expect(page?.text).toContain('Rotating work');
    expect(page?.text).toContain('invented');
    expect(page?.text).not.toMatch(/<script|undefined|NaN/);
    const [plain] = await texts(shopSheetModule, { form: 'text' }, loadExample('demo'), 'C');
    expect(plain?.text).toContain('STATIONS');
  });
});

test('typed names are shown, never run', () => {
  const table = {
    kind: 'table',
    id: 't',
    heading: 'a<b>',
    note: null,
    columns: ['x'],
    rows: [['=1+1'], ['-2.5'], ['a,"b"']],
  } as const;
  expect(tableCsv(table)).toBe('x\r\n\'=1+1\r\n-2.5\r\n"a,""b"""\r\n');
  expect(sheetHtml({ title: '<i>', about: [], parts: [table] })).not.toMatch(/<i>|<b>/);
});

describe('parts list', () => {
  const wax = loadExample('wax-head');
  const revision = revisionAt(wax, 0);
  const design = loadDesign('wax-head');
  const rows = (changed = design) =>
    partRows(partsTree({ revision, design: changed, prediction: null, presentation: null }));

  test('is indented, numbered without gaps, with the design’s figures', () => {
    const list = rows();
    expect(list.map(([number]) => number)).toEqual(
      expect.arrayContaining(['1', '1.1', '1.2', '1.2.1', '1.3.2', '1.10']),
    );
    const find = (name: string) => list.find((row) => row[2]?.trim() === name);
    expect(find('nozzle')?.[5]).toContain('orifice 0.8 mm');
    expect(find('heater, nozzle')?.[5]).toContain('20 W');
    const heaters = list.filter((row) => row[2]?.includes('heater,'));
    const heated = design.barrel.zones.filter(({ kind }) => kind === 'heated');
    expect(heaters).toHaveLength(heated.length + 1);
    expect(find('temperature control')?.[3]).toBe(String(heated.length + 1));
    expect(find('fasteners, seals, couplings, wiring, guards')?.[4]).toBe('by the maker');
  });

  test('says what is not described instead of making it up', () => {
    const bare = {
      ...design,
      barrel: { ...design.barrel, heatBreak: null },
      drive: { ...design.drive, bearing: null, gearRatio: 1 },
    };
    const list = rows(bare);
    const quantity = (name: string) => list.find((row) => row[2]?.trim() === name)?.[3];
    expect(quantity('heat break')).toBe('not described');
    expect(quantity('thrust bearing')).toBe('not described');
    expect(list.some((row) => row[2]?.trim() === 'gear')).toBe(false);
  });

  test('tells the thrust that a bearing must take where it was predicted', async () => {
    const [file] = await texts(partsListModule, { form: 'text' }, wax);
    expect(file?.text).toMatch(/predicted thrust [\d.]+ N running/);
    expect(file?.text).not.toMatch(/undefined|NaN/);
  });
});
