/** The barrel: half section, view from above, zones. */

import { openingRange, outerStretches } from '../../geometry/barrelWall.ts';
import { formatNumber, fromSi } from '../../units.ts';
import { type Axis, isBroken, isDrawn, onPaper } from './axis.ts';
import { heightDimension } from './dimensions.ts';
import { roughnessMark, roughnessText, through } from './marks.ts';
import type { Block, Entity, Point } from './model.ts';
import { type ChainLink, chainWithTotal, type Mark, markRow } from './rows.ts';
import { breakLines, centreLine } from './screwOutline.ts';
import { type DrawingSetting, letterHeight } from './setting.ts';
import { line, path, pt } from './shapes.ts';
import { fittedSize, mm, numberText, plainSize } from './size.ts';
import { tableBlocks } from './tables.ts';

/** Places where the barrel's shape changes, m, rising. */
export function barrelEdges({ design }: DrawingSetting): number[] {
  const { barrel } = design;
  const { start, end } = openingRange(barrel);
  const neck = barrel.heatBreak;
  const necks = neck ? [neck.start, neck.start + neck.length] : [];
  return [...new Set([0, start, end, ...necks, barrel.length])].sort((a, b) => a - b);
}

/** Outer surface from `from` to `to` (m): points with the neck's steps. */
function outerPoints(setting: DrawingSetting, axis: Axis, from: number, to: number): Point[] {
  const { barrel } = setting.design;
  const s = 1e3 * axis.scale;
  const R = (barrel.outerDiameter / 2) * s;
  const neck = barrel.heatBreak;
  const point = (z: number, y: number) => pt(onPaper(axis, z), y);
  if (!neck || neck.start >= to || neck.start + neck.length <= from) return [point(from, R), point(to, R)];
  const r = (barrel.boreDiameter / 2 + neck.wall) * s;
  const [a, b] = [Math.max(neck.start, from), Math.min(neck.start + neck.length, to)];
  const before = a > from ? [point(from, R), point(a, R)] : [];
  const after = b < to ? [point(b, R), point(to, R)] : [];
  return [...before, point(a, r), point(b, r), ...after];
}

/** Drawn stretches of wall above the axis: pieces of the axis less the feed opening. */
function wallStretches(setting: DrawingSetting, axis: Axis): { from: number; to: number }[] {
  const opening = openingRange(setting.design.barrel);
  return axis.pieces
    .flatMap(({ from, to }) => [
      { from, to: Math.min(to, opening.start) },
      { from: Math.max(from, opening.end), to },
    ])
    .filter(({ from, to }) => to - from > 1e-9);
}

/** The cut upper half: wall outlines, lining, and the opening's faces behind. */
function upperHalf(setting: DrawingSetting, axis: Axis): Entity[] {
  const { barrel } = setting.design;
  const s = 1e3 * axis.scale;
  const bore = (barrel.boreDiameter / 2) * s;
  const loops = wallStretches(setting, axis).map(({ from, to }) => [
    pt(onPaper(axis, from), bore),
    pt(onPaper(axis, to), bore),
    ...outerPoints(setting, axis, from, to).reverse(),
  ]);
  const { start, end } = openingRange(barrel);
  const half = Math.min(barrel.feedOpening.width / 2, barrel.boreDiameter / 2) * s;
  const seen = (from: number, to: number, r: number) => {
    const y = Math.sqrt(Math.max(r ** 2 - half ** 2, 0));
    return line('OUTLINE', pt(onPaper(axis, from), y), pt(onPaper(axis, to), y));
  };
  const edges = outerStretches(barrel)
    .map(({ from, to, radius }) => ({ from: Math.max(from, start), to: Math.min(to, end), r: radius * s }))
    .filter(({ from, to }) => to > from);
  const faces = [...edges.map(({ from, to, r }) => seen(from, to, r)), seen(start, end, bore)];
  return [
    ...loops.map((loop) => path('OUTLINE', loop, true)),
    { kind: 'hatch', layer: 'HATCH', loops, spacing: 2.5 },
    ...(end > start ? faces : []),
  ];
}

/** Outside below the axis, or on both sides of it. */
function outside(setting: DrawingSetting, axis: Axis, signs: readonly (1 | -1)[]): Entity[] {
  const { barrel } = setting.design;
  const both = signs.length === 2;
  const outlines = axis.pieces.flatMap(({ from, to }) => {
    const points = outerPoints(setting, axis, from, to);
    return signs.map((sign) =>
      path(
        'OUTLINE',
        points.map(({ x, y }) => pt(x, sign * y)),
      ),
    );
  });
  const R = (barrel.outerDiameter / 2) * 1e3 * axis.scale;
  const neck = barrel.heatBreak;
  const places = [0, barrel.length, ...(neck ? [neck.start, neck.start + neck.length] : [])];
  const faces = [...new Set(places)]
    .filter((z) => z >= 0 && z <= barrel.length && isDrawn(axis, z, 0))
    .map((z) => line('OUTLINE', pt(onPaper(axis, z), -R), pt(onPaper(axis, z), both ? R : 0)));
  return [...outlines, ...faces];
}

function chain(axis: Axis, edges: readonly number[], y: number, low: number): ChainLink[] {
  return edges.slice(1).map((to, i) => {
    const from = edges[i] as number;
    const scale = isBroken(axis, from, to) ? null : axis.scale;
    const height = Math.min(y, low);
    return {
      a: pt(onPaper(axis, from), height),
      b: pt(onPaper(axis, to), height),
      size: plainSize(mm(to - from), '', scale),
    };
  });
}

function barrelMarks(setting: DrawingSetting, axis: Axis, height: number): Mark[] {
  const { barrel } = setting.design;
  const s = 1e3 * axis.scale;
  const bore = (barrel.boreDiameter / 2) * s;
  const marks: Mark[] = [
    roughnessMark(roughnessText(setting.roughness.bore), pt(onPaper(axis, barrel.length * 0.85), bore), height),
  ];
  const neck = barrel.heatBreak;
  if (neck) {
    const r = (barrel.boreDiameter / 2 + neck.wall) * s;
    const x = onPaper(axis, neck.start + neck.length / 2);
    const diameter = mm(barrel.boreDiameter + 2 * neck.wall);
    marks.push(through({ x, low: pt(x, -r), high: pt(x, r) }, plainSize(diameter, '⌀', axis.scale), height));
  }
  return marks;
}

/** Half section on its axis y = 0: above cut, below seen from outside. */
export function barrelSection(setting: DrawingSetting, axis: Axis): Entity[] {
  const { barrel } = setting.design;
  const height = letterHeight(setting);
  const s = 1e3 * axis.scale;
  const [R, bore] = [(barrel.outerDiameter / 2) * s, (barrel.boreDiameter / 2) * s];
  const [left, right] = [0, onPaper(axis, barrel.length)];
  const neck = barrel.heatBreak;
  const edges = [...new Set([0, ...(neck ? [neck.start, neck.start + neck.length] : []), barrel.length])];
  const away = 2.2 * height + 2;
  const total = plainSize(mm(barrel.length), '', axis.leftOut > 0 ? null : axis.scale);
  const ends = [left, right].map((x) => line('OUTLINE', pt(x, 0), pt(x, bore)));
  return [
    ...upperHalf(setting, axis),
    ...outside(setting, axis, [-1]),
    ...ends,
    ...breakLines(axis, -R, R),
    centreLine(left, right),
    heightDimension(
      { x: left - away, low: pt(left, -R), high: pt(left, R) },
      plainSize(mm(barrel.outerDiameter), '⌀', axis.scale),
      height,
    ),
    heightDimension(
      { x: right + away, low: pt(right, -bore), high: pt(right, bore) },
      fittedSize(barrel.boreDiameter, setting.boreFit, axis.scale),
      height,
    ),
    ...chainWithTotal(chain(axis, edges, -R, -R), -R - 1.9 * height - 2, height, total),
    ...markRow(barrelMarks(setting, axis, height), R + 8, R + 2.5, left - 4, right + 4),
  ];
}

/** View from above with the feed opening, axis on y = 0. */
export function barrelPlan(setting: DrawingSetting, axis: Axis): Entity[] {
  const { barrel } = setting.design;
  const height = letterHeight(setting);
  const s = 1e3 * axis.scale;
  const R = (barrel.outerDiameter / 2) * s;
  const { start, end } = openingRange(barrel);
  const [left, right] = [0, onPaper(axis, barrel.length)];
  const half = (barrel.feedOpening.width / 2) * s;
  const [x0, x1] = [onPaper(axis, start), onPaper(axis, end)];
  const opening = path('OUTLINE', [pt(x0, -half), pt(x1, -half), pt(x1, half), pt(x0, half)], true);
  const edges = [...new Set([0, start, end])];
  const width = plainSize(mm(barrel.feedOpening.width), '', axis.scale);
  return [
    ...outside(setting, axis, [1, -1]),
    opening,
    ...breakLines(axis, -R, R),
    centreLine(left, right),
    heightDimension({ x: left - 2.2 * height - 2, low: pt(x0, -half), high: pt(x0, half) }, width, height),
    ...chainWithTotal(chain(axis, edges, -R, -R), -R - 1.9 * height - 2, height, plainSize(mm(end), '', axis.scale)),
  ];
}

/** Table of the zones, and what the heat break is. */
export function zoneTables(setting: DrawingSetting, mostRows: number): Block[] {
  const { barrel } = setting.design;
  const celsius = (kelvin: number) => formatNumber(fromSi(kelvin, '°C'), 4);
  const rows = barrel.zones.map((zone, i) => {
    const place = [String(i + 1), zone.name, zone.kind, numberText(mm(zone.start)), numberText(mm(zone.end))];
    if (zone.kind === 'heated') return [...place, celsius(zone.setTemperature), formatNumber(zone.maxPower, 4)];
    return [...place, zone.kind === 'cooled' ? celsius(zone.coolantTemperature) : '', ''];
  });
  const neck = barrel.heatBreak;
  const last = neck
    ? [
        [
          '',
          `heat break, wall ${numberText(mm(neck.wall))}`,
          'neck',
          numberText(mm(neck.start)),
          numberText(mm(neck.start + neck.length)),
          '',
          '',
        ],
      ]
    : [];
  const columns = [
    { head: 'No.' },
    { head: 'Zone', words: true },
    { head: 'Kind', words: true },
    { head: 'From, mm' },
    { head: 'To, mm' },
    { head: 'Temp., °C' },
    { head: 'Power, W' },
  ];
  return tableBlocks('Thermal zones along the bore', columns, [...rows, ...last], mostRows);
}
