/** The drawings as kinds of hand-over files. */

import { ok, type Result } from '../../result.ts';
import { utf8 } from '../bytes.ts';
import { fileName } from '../names.ts';
import type {
  HandoverFile,
  HandoverModule,
  HandoverProgress,
  HandoverSource,
  HandoverTools,
  HandoverValues,
} from '../types.ts';
import { buildDrawing } from './drawing.ts';
import type { Drawing, Sheet } from './model.ts';
import { drawingOptions, readSetting } from './options.ts';
import { sheetDxf } from './writeDxf.ts';
import { drawingPdf, type PdfDocumentClass } from './writePdf.ts';
import { sheetSvg } from './writeSvg.ts';

/** What all three share. */
const common = { group: 'drawing', needs: 'design', several: false, options: drawingOptions } as const;

/** One file a sheet. */
function sheetFiles(
  drawing: Drawing,
  stem: readonly string[],
  extension: string,
  mediaType: string,
  write: (sheet: Sheet) => string,
): HandoverFile[] {
  return drawing.sheets.map((sheet) => ({
    name: fileName([...stem, sheet.name], extension),
    mediaType,
    bytes: utf8(write(sheet)),
    cautions: drawing.cautions,
    facts: [...drawing.facts, { label: 'Views', text: sheet.views.map(({ name }) => name).join('; ') }],
  }));
}

/** Start of the files' names: project and revision. */
const stemOf = ({ project, subjects }: HandoverSource): string[] => [project.name, subjects[0]?.revision.id ?? ''];

const writer =
  (
    files: (drawing: Drawing, stem: readonly string[], tools: HandoverTools) => Promise<HandoverFile[]>,
  ): HandoverModule['write'] =>
  async (
    source: HandoverSource,
    values: HandoverValues,
    tools: HandoverTools,
    tell: HandoverProgress,
  ): Promise<Result<readonly HandoverFile[]>> => {
    tell(0, 'drawing');
    const drawing = buildDrawing(readSetting(source, values));
    if (!drawing.ok) return drawing;
    tell(0.6, 'writing');
    const written = await files(drawing.value, stemOf(source), tools);
    tell(1, 'done');
    return ok(written);
  };

/** Drawings for CAD. */
export const dxfModule: HandoverModule = {
  ...common,
  id: 'dxf',
  label: 'Drawing for CAD (DXF)',
  help: 'Workshop drawing with layers and dimensions that measure; one file a sheet, in mm at the sheet’s scale.',
  extension: 'dxf',
  mediaType: 'image/vnd.dxf',
  write: writer(async (drawing, stem) => sheetFiles(drawing, stem, 'dxf', 'image/vnd.dxf', sheetDxf)),
};

/** Drawings for the screen and for web pages. */
export const svgModule: HandoverModule = {
  ...common,
  id: 'svg',
  label: 'Drawing as a picture (SVG)',
  help: 'The same sheets as vector pictures in true size; one file a sheet.',
  extension: 'svg',
  mediaType: 'image/svg+xml',
  write: writer(async (drawing, stem) =>
    sheetFiles(drawing, stem, 'svg', 'image/svg+xml', (sheet) => sheetSvg(drawing, sheet)),
  ),
};

/** Drawings to print. */
export const pdfModule: HandoverModule = {
  ...common,
  id: 'pdf',
  label: 'Drawing to print (PDF)',
  help: 'The same sheets as pages in true size, all in one file.',
  extension: 'pdf',
  mediaType: 'application/pdf',
  write: writer(async (drawing, stem, tools) => {
    const { bytes, strange } = await drawingPdf(drawing, (await tools.pdf()) as PdfDocumentClass);
    const replaced = strange ? [{ label: 'Lettering', text: 'Signs outside Western European scripts became ?' }] : [];
    return [
      {
        name: fileName([...stem, 'drawing'], 'pdf'),
        mediaType: 'application/pdf',
        bytes,
        facts: [...drawing.facts, ...replaced],
        cautions: drawing.cautions,
      },
    ];
  }),
};
