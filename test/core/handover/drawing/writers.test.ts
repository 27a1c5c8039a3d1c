import DxfParser from 'dxf-parser';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import PDFDocument from 'pdfkit';
import { describe, expect, test } from 'vitest';
import { hatchLines } from '../../../../core/handover/drawing/hatchLines.ts';
import { lettering } from '../../../../core/handover/drawing/lettering.ts';
import type { DimensionEntity, Drawing, Sheet } from '../../../../core/handover/drawing/model.ts';
import { dxfModule, pdfModule, svgModule } from '../../../../core/handover/drawing/modules.ts';
import { runsOf } from '../../../../core/handover/drawing/signs.ts';
import { dxfText, sheetDxf } from '../../../../core/handover/drawing/writeDxf.ts';
import { drawingPdf, type PdfDocumentClass, standardText } from '../../../../core/handover/drawing/writePdf.ts';
import { sheetSvg } from '../../../../core/handover/drawing/writeSvg.ts';
import { runHandover } from '../../../../core/handover/run.ts';
import type { HandoverTools } from '../../../../core/handover/types.ts';
import { drawnCase, oddCase, sourceOf } from '../../../helpers/drawingCases.ts';
import { expectOk, loadExample } from '../../../helpers/projects.ts';

interface Read {
  readonly type: string;
  readonly layer: string;
  readonly text?: string;
  readonly block?: string;
  readonly actualMeasurement?: number;
  readonly linearOrAngularPoint1?: { x: number; y: number };
  readonly linearOrAngularPoint2?: { x: number; y: number };
  readonly vertices?: readonly { x: number; y: number }[];
}

const drawn = (values = {}): Drawing => drawnCase(oddCase('', values, () => undefined));
const isDimension = (entity: { kind: string }): entity is DimensionEntity => entity.kind === 'dimension';
const read = (sheet: Sheet) => new DxfParser().parseSync(sheetDxf(sheet));

const tools: HandoverTools = {
  solids: () => Promise.reject(new Error('not asked')),
  brep: () => Promise.reject(new Error('not asked')),
  pdf: () => Promise.resolve(PDFDocument),
};

describe('DXF', () => {
  const drawing = drawn();

  test.each(drawing.sheets.map((sheet) => [sheet.name, sheet] as const))('of %s is read back as drawn', (_, sheet) => {
    const file = read(sheet);
    const entities = (file?.entities ?? []) as unknown as Read[];
    expect(file?.header.$INSUNITS).toBe(4);
    const count = (list: readonly { layer: string }[], layer: string) =>
      list.filter((each) => each.layer === layer).length;
    // fills and linings are hatches, which this reader leaves out
    const plain = sheet.entities.filter(({ kind }) => kind !== 'fill' && kind !== 'hatch');
    for (const layer of ['FRAME', 'OUTLINE', 'THIN', 'CENTRE', 'CUT', 'TEXT', 'DIMENSION'])
      expect(count(entities, layer), layer).toBe(count(plain, layer));
    const points = entities.flatMap(({ vertices }) => vertices ?? []);
    for (const { x, y } of points) expect(x >= 0 && x <= sheet.width && y >= 0 && y <= sheet.height).toBe(true);
    const layers = Object.keys(file?.tables.layer.layers ?? {});
    expect(layers).toEqual(expect.arrayContaining(['OUTLINE', 'CENTRE', 'HATCH', 'DIMENSION']));
  });

  test('dimensions measure the part: their value, and their points at the scale of their style', () => {
    for (const sheet of drawing.sheets) {
      const file = read(sheet);
      const entities = ((file?.entities ?? []) as unknown as Read[]).filter(({ type }) => type === 'DIMENSION');
      const wanted = sheet.entities.filter(isDimension);
      expect(entities.length).toBe(wanted.length);
      entities.forEach((entity, i) => {
        const { form, value, along, scale } = wanted[i] as DimensionEntity;
        const measured = entity.actualMeasurement ?? Number.NaN;
        expect(form === 'angular' ? (measured * 180) / Math.PI : measured).toBeCloseTo(value, 6);
        expect(file?.blocks[entity.block ?? '']?.entities.length).toBeGreaterThan(1);
        const [a, b] = [entity.linearOrAngularPoint1, entity.linearOrAngularPoint2];
        if (form !== 'linear' || scale === null || !a || !b) return;
        expect((along === 'x' ? b.x - a.x : b.y - a.y) / scale).toBeCloseTo(value, 4);
      });
    }
  });

  test('holds the design’s own numbers', () => {
    const values = (name: string) =>
      drawing.sheets
        .filter((sheet) => sheet.name.startsWith(name))
        .flatMap(({ entities }) => entities.filter(isDimension));
    const has = (name: string, form: string, prefix: string, value: number) =>
      expect(
        values(name).some(
          (each) => each.form === form && each.prefix === prefix && Math.abs(each.value - value) < 1e-6,
        ),
        `${name} ${prefix}${value}`,
      ).toBe(true);
    // demo, revision C
    for (const length of [32, 55, 50]) has('screw', 'linear', '', length);
    has('screw', 'linear', '⌀', 10);
    has('screw', 'linear', '⌀', 13.8);
    has('screw', 'angular', '', 60);
    has('screw', 'radius', 'R', 1.2);
    for (const length of [44, 14, 162, 6, 24, 12]) has('barrel', 'linear', '', length);
    for (const diameter of [14, 28, 17]) has('barrel', 'linear', '⌀', diameter);
    for (const diameter of [18, 14, 5, 1.2]) has('nozzle', 'linear', '⌀', diameter);
    has('nozzle', 'linear', '', 2.4);
    expect(values('nozzle').filter(({ form }) => form === 'angular').length).toBe(2);
  });

  test('writes line widths, signs in its own spelling, and linings where sections are cut', () => {
    const barrel = drawing.sheets.find(({ name }) => name.startsWith('barrel')) as Sheet;
    const text = sheetDxf(barrel);
    expect(text).toMatch(/\nOUTLINE\n[\s\S]{0,60}370\n50\n/);
    expect(text).toContain('HATCH');
    expect(text).toContain('ANSI31');
    expect(text).toContain('%%c<> H7 (+18/0 \\U+00B5m)');
    expect(dxfText('⌀5 ±0.1 60° 漢')).toBe('%%c5 %%p0.1 60%%d \\U+6F22');
  });
});

describe('SVG', () => {
  test('is a true-size picture with names for those who cannot see it', () => {
    const drawing = drawn({ part: 'nozzle', size: 'A4', title: 'Düse <1> & "2"' });
    const svg = sheetSvg(drawing, drawing.sheets[0] as Sheet);
    expect(svg).toContain('width="297mm" height="210mm" viewBox="0 0 297 210"');
    expect(svg).toContain('<title id="title">Düse &lt;1&gt; &amp; &quot;2&quot;, nozzle</title>');
    expect(svg).toMatch(/<desc id="desc">[^<]*Section \(5:1\)/);
    expect(svg).toMatch(/<text [^>]*>Notes<\/text>/);
    expect(svg).not.toMatch(/NaN|undefined|url\(|@font-face|<style/);
    for (const sign of ['⌀', '−', '≤']) expect(svg.replace(/<desc.*<\/desc>/, '')).not.toContain(sign);
  });

  test('lining stays inside its outline', () => {
    const square = [
      [0, 0],
      [10, 0],
      [10, 10],
      [0, 10],
    ].map(([x = 0, y = 0]) => ({ x, y }));
    const hole = square.map(({ x, y }) => ({ x: 4 + x / 5, y: 4 + y / 5 }));
    const lines = hatchLines({ kind: 'hatch', layer: 'HATCH', loops: [square, hole], spacing: 1 });
    const length = lines.reduce((sum, [a, b]) => sum + Math.hypot(b.x - a.x, b.y - a.y), 0);
    // lines of spacing 1 are as long as the lined area is large: 100 - 4
    expect(length).toBeGreaterThan(93);
    expect(length).toBeLessThan(99);
  });

  test('signs are drawn where their width leaves room', () => {
    const text = lettering('Root ⌀ 5', { x: 0, y: 0 }, 2.5);
    const runs = runsOf(text);
    expect(runs.map((run) => [run.text, run.strokes.length])).toEqual([
      ['Root', 0],
      ['⌀', 2],
      ['5', 0],
    ]);
    const last = runs[2];
    expect((last?.at.x ?? 0) + (last?.width ?? 0)).toBeCloseTo(text.width, 9);
  });
});

describe('PDF', () => {
  test('has pages of exact size, a title, and text that can be searched', async () => {
    const drawing = drawn({ size: 'A4', title: 'Trial head' });
    const { bytes, strange } = await drawingPdf(drawing, PDFDocument as unknown as PdfDocumentClass);
    expect(strange).toBe(false);
    const task = getDocument({ data: bytes, useSystemFonts: true, verbosity: 0 });
    const pdf = await task.promise;
    expect(pdf.numPages).toBe(drawing.sheets.length);
    const { info } = await pdf.getMetadata();
    expect((info as { Title?: string }).Title).toBe('Trial head');
    const page = await pdf.getPage(1);
    const [, , width = 0, height = 0] = page.view;
    expect((width * 25.4) / 72).toBeCloseTo(297, 2);
    expect((height * 25.4) / 72).toBeCloseTo(210, 2);
    const { items } = await page.getTextContent();
    const words = items.map((item) => ('str' in item ? item.str : ''));
    expect(words).toEqual(expect.arrayContaining(['Trial head, screw', 'ISO 2768-m', '55', 'Approval person']));
    const wanted = drawing.sheets[0]?.entities.find(
      (entity) => entity.kind === 'text' && entity.text === 'Approval person',
    );
    const found = items.find((item) => 'str' in item && item.str === 'Approval person');
    if (wanted?.kind !== 'text' || !found || !('transform' in found)) throw new Error('no such text');
    const [across = 0, , , , x = 0, y = 0] = (found.transform as number[]).map((points) => (points * 25.4) / 72);
    expect([x, y]).toEqual([expect.closeTo(wanted.at.x, 2), expect.closeTo(wanted.at.y, 2)]);
    // the type size whose capitals are as high as wanted
    expect(across * 0.718).toBeCloseTo(wanted.height, 2);
    await task.destroy();
  });

  test('says where it replaced characters', () => {
    expect(standardText('Düse 漢')).toEqual({ text: 'Düse ?', strange: true });
    expect(standardText('Düse').strange).toBe(false);
  });

  test('is the same twice', async () => {
    const write = () => drawingPdf(drawn({ part: 'nozzle' }), PDFDocument as unknown as PdfDocumentClass);
    expect((await write()).bytes).toEqual((await write()).bytes);
  });
});

describe('modules', () => {
  test.each([dxfModule, svgModule, pdfModule])('write files with names, bytes and cautions: $id', async (module) => {
    const source = sourceOf(loadExample('demo'), 'C');
    const files = expectOk(await runHandover(module, source, { size: 'A4' }, tools));
    expect(files.length).toBe(module.id === 'pdf' ? 1 : 6);
    for (const { name, bytes, cautions } of files) {
      expect(name).toMatch(new RegExp(`^[A-Za-z0-9.-]+\\.${module.extension}$`));
      expect(bytes.length).toBeGreaterThan(5000);
      expect(cautions?.join(' ')).toMatch(/pressure.*local codes/);
    }
  });
});
