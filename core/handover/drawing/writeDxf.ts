/**
 * A sheet as DXF (AutoCAD 2007 text form, read by common programs): model space is the sheet in paper mm; dimensions are
 * dimension entities whose style carries the scale of their view, so that readers measure the part and not the paper.
 */

import {
  type DxfBlock,
  type Dxfier,
  DxfWriter,
  HatchBoundaryPaths,
  HatchPolylineBoundary,
  HatchPredefinedPatterns,
  LWPolylineFlags,
  point2d,
  point3d,
  Units,
} from '@tarikjabiri/dxf';
import { layerNames, layers } from './layers.ts';
import { textWidth } from './lettering.ts';
import type { DimensionEntity, Entity, Point, Sheet, TextEntity } from './model.ts';

/** Something that takes entities: model space or a block. */
type Target = DxfBlock | DxfWriter['modelSpace'];

const centreType = 'CENTRE_LINE';
/** Width of the lining pattern at scale 1, mm. */
const liningPitch = 3.175;

/** Text in DXF's own spelling of signs; what its old fonts lack is written as code points. */
export function dxfText(text: string): string {
  const signs: Readonly<Record<string, string>> = { '⌀': '%%c', '±': '%%p', '°': '%%d', '−': '-', '%': '%%%' };
  return Array.from(text, (c) => {
    const code = c.codePointAt(0) ?? 0;
    if (signs[c]) return signs[c];
    if (code < 127) return c;
    return Array.from(
      c.split(''),
      (unit) => `\\U+${unit.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}`,
    ).join('');
  }).join('');
}

const at = ({ x, y }: Point) => point3d(x, y, 0);

/** Width of a font's letters differs from ours: the factor makes a text as wide as its box, as far as readers use Arial. */
function addText(target: Target, { text, at: place, height, turn, layer }: TextEntity): void {
  if (textWidth(text, height) === 0) return;
  target.addText(at(place), height, dxfText(text), { rotation: turn, layerName: layer });
}

function addLoops(loops: readonly (readonly Point[])[]): HatchBoundaryPaths {
  const paths = new HatchBoundaryPaths();
  for (const loop of loops) {
    const boundary = new HatchPolylineBoundary();
    for (const { x, y } of loop) boundary.add({ x, y });
    paths.addPolylineBoundary(boundary);
  }
  return paths;
}

function addPath(target: Target, layerName: string, points: readonly Point[], closed: boolean): void {
  const [a, b] = points;
  if (points.length === 2 && a && b) {
    target.addLine(at(a), at(b), { layerName });
    return;
  }
  const flags = closed ? LWPolylineFlags.Closed : LWPolylineFlags.None;
  target.addLWPolyline(
    points.map(({ x, y }) => ({ point: point2d(x, y) })),
    { layerName, flags },
  );
}

/** Entities other than dimensions. */
function addPlain(target: Target, entity: Exclude<Entity, DimensionEntity>): void {
  const layerName = entity.layer;
  switch (entity.kind) {
    case 'path':
      addPath(target, layerName, entity.points, entity.closed);
      return;
    case 'circle':
      target.addCircle(at(entity.centre), entity.radius, { layerName });
      return;
    case 'arc':
      target.addArc(at(entity.centre), entity.radius, entity.from, entity.to, { layerName });
      return;
    case 'fill':
      target.addHatch(addLoops([entity.points]), { name: HatchPredefinedPatterns.SOLID }, { layerName });
      return;
    case 'hatch': {
      const scale = entity.spacing / liningPitch;
      target.addHatch(addLoops(entity.loops), { name: HatchPredefinedPatterns.ANSI31, scale }, { layerName });
      return;
    }
    case 'text':
      addText(target, entity);
  }
}

const styleName = ({ scale }: DimensionEntity): string =>
  scale === null ? 'BROKEN' : `VIEW_${Number(scale.toFixed(4)).toString().replace('.', '_')}`;

/** Style of dimensions of one view scale. */
function addStyle(dxf: DxfWriter, dimension: DimensionEntity): void {
  const name = styleName(dimension);
  const table = dxf.tables.dimStyleTable;
  if (table.records.some((record) => record.name === name)) return;
  const style = dxf.addDimStyle(name);
  const { height } = dimension.label;
  style.DIMTXT = height;
  style.DIMASZ = height;
  style.DIMEXO = 0.8;
  style.DIMEXE = 1.6;
  style.DIMGAP = 0.9;
  style.DIMDEC = 3;
  style.DIMADEC = 2;
  style.DIMZIN = 8;
  style.DIMAZIN = 2;
  style.DIMTAD = 1;
  style.DIMTIH = 0;
  style.DIMTOH = 0;
  style.DIMTMOVE = 2;
  style.DIMLUNIT = 2;
  style.DIMDSEP = 46;
  style.DIMLFAC = dimension.scale === null ? 1 : 1 / dimension.scale;
  style.DIMTXSTY = dxf.document.styleStandard.handle;
}

/** Text of a dimension: the measured value stands for itself unless the view is broken. */
function dimensionText({ label, prefix, scale, form }: DimensionEntity, written: string): string {
  if (scale === null || form === 'angular') return dxfText(label.text);
  return dxfText(label.text).replace(dxfText(`${prefix}${written}`), `${dxfText(prefix)}<>`);
}

/** Middle of a text's box. */
const middle = ({ box }: TextEntity) => point3d((box.left + box.right) / 2, (box.bottom + box.top) / 2, 0);

function addDimension(dxf: DxfWriter, entity: DimensionEntity, index: number): void {
  // the writer's own way strips the star that marks a block without a name
  const block = dxf.blocks.addBlock(`*D${index}`, dxf.document.objects, false);
  block.flags = 1;
  for (const stroke of entity.strokes) addPlain(block, stroke);
  addText(block, entity.label);
  addStyle(dxf, entity);
  const { first, second, vertex, place, along, value, label } = entity;
  const written = String(Number(value.toFixed(3)));
  const options = {
    layerName: entity.layer,
    blockName: block.name,
    definitionPoint: at(place),
    middlePoint: middle(label),
    ActualMeasurement: entity.form === 'angular' ? (value * Math.PI) / 180 : value,
    text: dimensionText(entity, written),
    styleName: styleName(entity),
    // the text's own direction against the horizontal
    rotation: label.turn,
  };
  const space = dxf.modelSpace;
  const dimension =
    entity.form === 'linear'
      ? space.addLinearDim(at(first), at(second), { ...options, angle: along === 'x' ? 0 : 90 })
      : entity.form === 'radius'
        ? space.addRadialDim(at(second), at(first), { ...options, leaderLength: 0 })
        : space.addAngularPointsDim(at(vertex ?? place), at(first), at(second), options);
  // 32: the block is this dimension's own; 128: its text stands where it was put
  (dimension as unknown as { dimensionType: number }).dimensionType |= 32 | 128;
}

/** Makes a layer say its line width, which the library always writes as zero. In hundredths of a mm. */
function withLineWidth(layer: { dxfy(dx: Dxfier): void }, width: number): void {
  const write = layer.dxfy.bind(layer);
  layer.dxfy = (dx) => {
    write(dx);
    const code = dx.lines.lastIndexOf(370);
    if (code >= 0) dx.lines[code + 1] = Math.round(width * 100);
  };
}

function addLayers(dxf: DxfWriter): void {
  const dashes = layers.CENTRE.dashes;
  // DXF counts gaps as negative lengths
  dxf.addLType(
    centreType,
    'long dash, dot',
    dashes.map((dash, i) => (i % 2 === 0 ? dash : -dash)),
  );
  for (const name of layerNames) {
    const { colour, width } = layers[name];
    const type = name === 'CENTRE' ? centreType : 'Continuous';
    withLineWidth(dxf.addLayer(name, colour, type), width);
  }
}

/** Text of one sheet. */
export function sheetDxf(sheet: Sheet): string {
  const dxf = new DxfWriter();
  dxf.setUnits(Units.Millimeters);
  const { width, height } = sheet;
  dxf.setVariable('$LASTSAVEDBY', { 1: 'Augerwright' });
  dxf.setVariable('$MEASUREMENT', { 70: 1 });
  dxf.setVariable('$EXTMIN', { 10: 0, 20: 0, 30: 0 });
  dxf.setVariable('$EXTMAX', { 10: width, 20: height, 30: 0 });
  dxf.setVariable('$LIMMIN', { 10: 0, 20: 0 });
  dxf.setVariable('$LIMMAX', { 10: width, 20: height });
  dxf.setVariable('$LTSCALE', { 40: 1 });
  dxf.setVariable('$LWDISPLAY', { 290: 1 });
  dxf.document.styleStandard.fontFileName = 'arial.ttf';
  addLayers(dxf);
  let index = 0;
  for (const entity of sheet.entities) {
    if (entity.kind === 'dimension') addDimension(dxf, entity, ++index);
    else addPlain(dxf.modelSpace, entity);
  }
  return `${dxf.stringify()}\n`;
}
