/** The screw from the side with its dimensions, and from its tip. */

import type { Design } from '../../design/types.ts';
import { transverseOutline } from '../../geometry/outlines.ts';
import {
  distanceAfterTurns,
  flightRadius,
  type PlacedSection,
  placeSections,
  sectionsLength,
  turnsOf,
} from '../../geometry/profile.ts';
import { tipShape } from '../../geometry/tip.ts';
import { type Axis, breakGap, isBroken, isDrawn, onPaper } from './axis.ts';
import { heightDimension } from './dimensions.ts';
import { envelope } from './helixView.ts';
import { lettering, textWidth } from './lettering.ts';
import { balloon, balloonRoom, letter, note, roughnessMark, roughnessText } from './marks.ts';
import type { Entity, Point } from './model.ts';
import { type ChainLink, chainWithTotal, type Mark, markRow } from './rows.ts';
import { centreLine, screwLines } from './screwOutline.ts';
import { type DrawingSetting, letterHeight } from './setting.ts';
import { arrow, line, path, pt, simplified } from './shapes.ts';
import { auxiliary, fittedSize, mm, plainSize } from './size.ts';

/** A place that a detail enlarges. */
export interface DetailPlace {
  readonly letter: string;
  /** m along the screw and from the axis */
  readonly z: number;
  readonly y: number;
  /** of the circle round it, m */
  readonly radius: number;
}

/** Widest radius of the screw, m. */
export const widestRadius = (design: Design): number =>
  Math.max(flightRadius(design), design.screw.shankLength > 0 ? design.screw.shankDiameter / 2 : 0);

/** Ends of the screw, m. */
export const screwEnds = (design: Design): { from: number; to: number } => ({
  from: -design.screw.shankLength,
  to: tipShape(design).end,
});

/** Places of a flighted section where its first flight stands upright, m. */
function uprightPlaces(design: Design, placed: PlacedSection): number[] {
  const { section, turnsBefore, start } = placed;
  if (section.kind === 'plain') return [];
  const wanted = design.screw.hand === 'left' ? 0.75 : 0.25;
  const step = 1 / section.starts;
  const first = Math.ceil((turnsBefore - wanted) / step) * step + wanted - turnsBefore;
  const count = Math.max(0, Math.floor((turnsOf(section) - first) / step) + 1);
  return Array.from({ length: count }, (_, i) => start + distanceAfterTurns(section, first + i * step));
}

/** Where the flight of a section stands upright nearest to a share of its length and is drawn, m; its middle otherwise. */
export function uprightPlace(design: Design, axis: Axis, placed: PlacedSection, share: number): number {
  const wanted = placed.start + share * (placed.end - placed.start);
  const margin = 3 / (1e3 * axis.scale);
  const places = uprightPlaces(design, placed).filter((z) => isDrawn(axis, z, margin));
  const near = places.sort((a, b) => Math.abs(a - wanted) - Math.abs(b - wanted))[0];
  return near ?? wanted;
}

/** The first flighted section. */
export const firstFlighted = (design: Design): PlacedSection | null =>
  placeSections(design.screw).find(({ section }) => section.kind === 'flighted') ?? null;

function links(setting: DrawingSetting, axis: Axis, low: number): ChainLink[] {
  const { design } = setting;
  const { screw } = design;
  const tip = tipShape(design);
  const stretches = [
    { from: -screw.shankLength, to: 0, r: screw.shankDiameter / 2 },
    ...placeSections(screw).map(({ start, end, section }) => ({
      from: start,
      to: end,
      r: section.kind === 'flighted' ? flightRadius(design) : section.rootDiameterEnd / 2,
    })),
    { from: tip.start, to: tip.end, r: 0 },
  ].filter(({ from, to }) => to - from > 1e-9);
  return stretches.map(({ from, to }) => {
    const size = plainSize(mm(to - from), '', isBroken(axis, from, to) ? null : axis.scale);
    const a = pt(onPaper(axis, from), low);
    // the tip is dimensioned where it is enlarged
    return { a, b: pt(onPaper(axis, to), low), size: from === tip.start && to === tip.end ? auxiliary(size) : size };
  });
}

function diameters(setting: DrawingSetting, axis: Axis, height: number): Entity[] {
  const { design } = setting;
  const { screw } = design;
  const s = 1e3 * axis.scale;
  const away = 2.2 * height + 2;
  const ends = screwEnds(design);
  const found: Entity[] = [];
  if (screw.shankLength > 0) {
    const r = (screw.shankDiameter / 2) * s;
    const x = onPaper(axis, ends.from);
    const measure = { x: x - away, low: pt(x, -r), high: pt(x, r) };
    found.push(heightDimension(measure, fittedSize(screw.shankDiameter, setting.shankFit, axis.scale), height));
  }
  const last = placeSections(screw)
    .filter(({ section }) => section.kind === 'flighted')
    .pop();
  const r = flightRadius(design) * s;
  const x = onPaper(axis, last ? last.end : 0);
  const measure = { x: onPaper(axis, ends.to) + away, low: pt(x, -r), high: pt(x, r) };
  found.push(heightDimension(measure, fittedSize(2 * flightRadius(design), setting.flightFit, axis.scale), height));
  return found;
}

/** Cutting plane across the screw with its arrows and lower letter; the upper letter stands in the row of marks. */
function cuttingPlane(x: number, r: number, height: number, walls: readonly number[]): Entity[] {
  const size = 1.4 * height;
  // on the side where no extension line of the chain below would run through it
  const left = x - 6.2 - textWidth('A', size);
  const isFree = !walls.some((wall) => wall > left - 0.8 && wall < x - 5.4);
  const at = pt(isFree ? left : x + 1.4, -(r + 3.2) - size / 2);
  const stroke = (sign: 1 | -1) => [
    line('CUT', pt(x, sign * (r + 0.8)), pt(x, sign * (r + 4.2))),
    line('DIMENSION', pt(x, sign * (r + 3.2)), pt(x - 5, sign * (r + 3.2))),
    arrow('DIMENSION', pt(x - 5, sign * (r + 3.2)), -1, 0, height),
  ];
  const cut = line('CENTRE', pt(x, -r), pt(x, r));
  return [...stroke(1), ...stroke(-1), cut, lettering('A', at, size)];
}

/** Numbers, letters, textures. Where there are more sections than room, every second or third is numbered. */
function marks(setting: DrawingSetting, axis: Axis, cut: number | null, details: readonly DetailPlace[]): Mark[] {
  const { design } = setting;
  const height = letterHeight(setting);
  const s = 1e3 * axis.scale;
  const crest = flightRadius(design) * s;
  const placedAll = placeSections(design.screw);
  const { from, to } = screwEnds(design);
  const every = Math.ceil((placedAll.length * balloonRoom(height)) / (onPaper(axis, to) - onPaper(axis, from) - 36));
  const numbered = placedAll.filter(({ index }) => index % Math.max(1, every) === 0);
  const found: Mark[] = numbered.map((placed) => {
    const { start, end, section, index } = placed;
    const z = section.kind === 'flighted' ? uprightPlace(design, axis, placed, 0.5) : (start + end) / 2;
    const r = (envelope(design, placed, z, z, 1)[0]?.y ?? 0) * s;
    return balloon(String(index + 1), pt(onPaper(axis, z), r), height);
  });
  if (cut !== null) found.push(letter('A', pt(onPaper(axis, cut), crest + 4.2), 1.4 * height));
  for (const { letter: name, z, y, radius } of details) {
    found.push(letter(name, pt(onPaper(axis, z), (y + radius) * s), 1.4 * height));
  }
  const { shankFillet, shankDiameter, shankLength } = design.screw;
  if (shankLength > 0) {
    const r = (shankDiameter / 2) * s;
    const x = onPaper(axis, -shankLength * 0.65);
    found.push(roughnessMark(roughnessText(setting.roughness.shank), pt(x, r), height));
    if (shankFillet) found.push(note(`R${Number((shankFillet * 1e3).toFixed(3))}`, pt(onPaper(axis, 0), r), height));
  }
  return found;
}

/** The circle round what a detail shows. */
function detailCircle(axis: Axis, { z, y, radius }: DetailPlace): Entity {
  const s = 1e3 * axis.scale;
  return { kind: 'circle', layer: 'THIN', centre: pt(onPaper(axis, z), y * s), radius: radius * s };
}

/** Side view on its axis y = 0 with lengths below, diameters beside and marks above. */
export function screwSide(
  setting: DrawingSetting,
  axis: Axis,
  cut: number | null,
  details: readonly DetailPlace[],
): Entity[] {
  const { design } = setting;
  const height = letterHeight(setting);
  const s = 1e3 * axis.scale;
  const widest = widestRadius(design) * s;
  const highest = Math.max(widest + (cut === null ? 0 : 4.2), ...details.map(({ y, radius }) => (y + radius) * s));
  const lowest = Math.max(
    widest + (cut === null ? 0 : 4.2 + 1.5 * height),
    ...details.map(({ y, radius }) => (radius - y) * s),
  );
  const ends = screwEnds(design);
  const [left, right] = [onPaper(axis, ends.from), onPaper(axis, ends.to)];
  const stretches = links(setting, axis, -widest);
  const breaks = axis.pieces.slice(1).flatMap(({ x }) => [x - breakGap, x]);
  const walls = [...stretches.flatMap(({ a, b }) => [a.x, b.x]), ...breaks];
  const chain = chainWithTotal(
    stretches,
    -lowest - 1.9 * height - 1,
    height,
    plainSize(mm(ends.to - ends.from), '', axis.leftOut > 0 ? null : axis.scale),
  );
  return [
    ...screwLines(design, axis),
    ...details.map((detail) => detailCircle(axis, detail)),
    ...(cut === null ? [] : cuttingPlane(onPaper(axis, cut), flightRadius(design) * s, height, walls)),
    ...diameters(setting, axis, height),
    ...chain,
    ...markRow(marks(setting, axis, cut, details), highest + 7.5, highest + 2, left - 4, right + 4),
  ];
}

/** An outline in metres as points on paper. */
export function outlinePoints(outline: { x: Float64Array; y: Float64Array }, scale: number): Point[] {
  const points = Array.from(outline.x, (x, i) => pt(x * 1e3 * scale, (outline.y[i] as number) * 1e3 * scale));
  const first = points[0];
  return first ? simplified([...points, first], 0.01).slice(0, -1) : [];
}

/** The screw seen from its tip, centre at the origin. */
export function screwEnd({ design }: DrawingSetting, scale: number): Entity[] {
  const s = 1e3 * scale;
  const crest = flightRadius(design) * s;
  const widest = widestRadius(design) * s;
  const { pinRadius, bodyRadius } = tipShape(design);
  const end = outlinePoints(transverseOutline(design, sectionsLength(design.screw)), scale);
  const radii = [crest, ...(widest > crest ? [widest] : []), pinRadius * s, bodyRadius * s].filter((r) => r > 0);
  const circles = [...new Set(radii.map((r) => Number(r.toFixed(6))))].map(
    (radius): Entity => ({ kind: 'circle', layer: 'OUTLINE', centre: pt(0, 0), radius }),
  );
  return [
    ...circles,
    path('OUTLINE', end, true),
    centreLine(-widest, widest),
    line('CENTRE', pt(0, -widest - 3), pt(0, widest + 3)),
  ];
}
