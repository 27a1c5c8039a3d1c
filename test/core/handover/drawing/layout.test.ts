import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { textsOf } from '../../../../core/handover/drawing/dimensions.ts';
import { buildDrawing, sheetRoom } from '../../../../core/handover/drawing/drawing.ts';
import { sheetFormats } from '../../../../core/handover/drawing/formats.ts';
import type { Box, Drawing, Sheet } from '../../../../core/handover/drawing/model.ts';
import { readSetting } from '../../../../core/handover/drawing/options.ts';
import { entityBox } from '../../../../core/handover/drawing/shapes.ts';
import { anyProject, pinned } from '../../../helpers/arbitraries.ts';
import { drawnCase, oddCase, oddCases, sourceOf, startValues } from '../../../helpers/drawingCases.ts';
import { exampleNames, loadExample } from '../../../helpers/projects.ts';

/** How far boxes may touch, mm: last digits only. */
const touch = 1e-6;

const meet = (a: Box, b: Box): boolean =>
  a.left < b.right - touch && b.left < a.right - touch && a.bottom < b.top - touch && b.bottom < a.top - touch;

const inside = (inner: Box, outer: Box): boolean =>
  inner.left >= outer.left - touch &&
  inner.right <= outer.right + touch &&
  inner.bottom >= outer.bottom - touch &&
  inner.top <= outer.top + touch;

/** Texts that lie over each other, outside the frame or are cut off to nothing; views that meet. */
function faults(sheet: Sheet): string[] {
  const texts = sheet.entities.flatMap(textsOf);
  const found = texts
    .filter(({ box }) => !inside(box, sheet.frame))
    .map(({ text }) => `${sheet.name}: outside the frame: ${text}`);
  texts.forEach((a, i) => {
    for (const b of texts.slice(i + 1)) if (meet(a.box, b.box)) found.push(`${sheet.name}: ${a.text} over ${b.text}`);
  });
  sheet.views.forEach((a, i) => {
    for (const b of sheet.views.slice(i + 1))
      if (meet(a.box, b.box)) found.push(`${sheet.name}: ${a.name} meets ${b.name}`);
  });
  for (const entity of sheet.entities) {
    const box = entityBox(entity);
    const fine = entity.layer === 'FRAME' || inside(box, sheet.frame);
    if (!fine) found.push(`${sheet.name}: ${entity.kind} on ${entity.layer} outside the frame`);
    if (!Object.values(box).every(Number.isFinite)) found.push(`${sheet.name}: ${entity.kind} has no finite place`);
  }
  return found;
}

const allFaults = (drawing: Drawing): string[] => drawing.sheets.flatMap(faults);

describe('sheets', () => {
  test.each(exampleNames)('of %s keep every text apart and inside the frame on A4 and A3', (example) => {
    const project = loadExample(example);
    for (const size of ['A4', 'A3'])
      for (const { id } of project.revisions) {
        const drawing = drawnCase({ name: '', project, revisionId: id, values: { size } });
        expect(allFaults(drawing), `${example} ${id} ${size}`).toEqual([]);
      }
  });

  test.each(oddCases.map((one) => [one.name, one] as const))('of the odd design %s do so too', (_, one) => {
    expect(allFaults(drawnCase(one))).toEqual([]);
  });

  test('of any design do so too', () => {
    const sizes = fc.constantFrom(...sheetFormats.map(({ id }) => id));
    fc.assert(
      fc.property(anyProject, sizes, fc.constantFrom('first', 'third'), (project, size, projection) => {
        const source = sourceOf(project, project.activeRevision);
        const drawing = buildDrawing(readSetting(source, { ...startValues, size, projection }));
        expect(drawing.ok && allFaults(drawing.value)).toEqual([]);
      }),
      pinned(16),
    );
  });

  test('the check sees overlapping texts and ones outside the frame', () => {
    const [sheet] = drawnCase(oddCases[0] ?? oddCase('', {}, () => undefined)).sheets;
    if (!sheet) throw new Error('no sheet');
    const text = sheet.entities.find((entity) => entity.kind === 'text');
    if (text?.kind !== 'text') throw new Error('no text');
    const out = { ...text, box: { ...text.box, left: -5, right: 5 } };
    expect(faults({ ...sheet, entities: [...sheet.entities, text] })).toEqual([
      `${sheet.name}: ${text.text} over ${text.text}`,
    ]);
    expect(faults({ ...sheet, entities: [...sheet.entities, out] }).length).toBeGreaterThan(0);
  });

  test('a long screw is broken and says so; a short one is not', () => {
    const long = drawnCase(
      oddCase('', { part: 'screw', size: 'A4' }, (revision) => {
        for (const section of revision.screw.sections) section.lengthMm *= 8;
        revision.barrel.lengthMm = 1282;
        const last = revision.barrel.zones[revision.barrel.zones.length - 1];
        if (last) last.endMm = 1282;
      }),
    );
    expect(long.sheets[0]?.views[0]?.name).toMatch(/broken: [\d.]+ mm left out/);
    const short = drawnCase(oddCase('', { part: 'screw' }, () => undefined));
    expect(short.sheets[0]?.views[0]?.name).toBe('Side view (1:1)');
  });

  test('a scale that leaves no room is refused, one that fits is taken', () => {
    const project = loadExample('demo');
    const draw = (scale: string) =>
      buildDrawing(readSetting(sourceOf(project, 'C'), { ...startValues, part: 'screw', size: 'A4', scale }));
    const refused = draw('20:1');
    expect(refused.ok ? [] : refused.issues.map(({ code }) => code)).toEqual(['drawing-no-room']);
    const taken = draw('1:2');
    expect(taken.ok && taken.value.sheets[0]?.scaleText).toBe('1:2');
  });

  test('brackets the depth, says how widths are measured, and what open limits mean for the flow', () => {
    const { sheets } = drawnCase(oddCase('', { size: 'A3' }, () => undefined));
    const words = (part: string) =>
      sheets
        .filter(({ name }) => name.startsWith(part))
        .flatMap(({ entities }) => entities.flatMap(textsOf))
        .map(({ text }) => text)
        .join(' ');
    const screw = words('screw');
    // demo, revision C: crest 13.8, root 6.4
    expect(screw).toContain('(3.7)');
    expect(screw).not.toMatch(/(?<![(\d.])3\.7(?![\d)])/);
    expect(screw).toMatch(/Detail \w \([\d:]+\), width along the axis/);
    expect(screw).toContain('Width along axis');
    // 13.8 - 10.4 = 3.4, half of it deep; ±0.2 on the diameter by ISO 2768-m is 0.1 / 1.7
    expect(screw).toContain('Root ±0.2: least depth 1.7 ±6 %');
    // (1.1 / 1.2)^4 = 0.706, (1.3 / 1.2)^4 = 1.377
    expect(words('nozzle')).toContain('−29 to +38 %');
  });

  test('views stand over the title block, notes beside it', () => {
    const { main, aside } = sheetRoom({ format: sheetFormats[1] as (typeof sheetFormats)[number] });
    for (const sheet of drawnCase(oddCase('', { size: 'A3' }, () => undefined)).sheets)
      for (const { name, box } of sheet.views) expect(inside(box, main) || inside(box, aside), name).toBe(true);
  });
});
