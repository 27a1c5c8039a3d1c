/** Where melt stays long, as maps of a half-plane through the axis, from solved fields alone. */

import type { Design } from '../../design/types.ts';
import type { Prediction } from '../../prediction/types.ts';
import { type DwellSection, dwellSection, meltStart } from '../../present/dwellSection.ts';
import { sideShape } from '../../present/sideShape.ts';
import { spotPlace } from '../../present/spotPlace.ts';
import type { Revision } from '../../project/schema.ts';
import { formatNumber } from '../../units.ts';
import {
  areas,
  box,
  fullWidth,
  line,
  type PathShape,
  type Picture,
  type Spot,
  type TextShape,
  widthOf,
  word,
} from './picture.ts';
import { bandGrid, bandRectangles, type Grid } from './raster.ts';
import { linearTicks } from './ticks.ts';

type Shape = PathShape | TextShape;

/** Bands of time over the mean, each with its words and its colour: light to dark, even for colour-blind readers. */
export const dwellBands: readonly { readonly upTo: number; readonly text: string; readonly colour: `#${string}` }[] = [
  { upTo: 0.5, text: 'under half the mean', colour: '#fde725' },
  { upTo: 1, text: 'up to the mean', colour: '#7ad151' },
  { upTo: 2, text: 'up to 2 × mean', colour: '#22a884' },
  { upTo: 3, text: 'up to 3 × mean', colour: '#2a788e' },
  { upTo: 5, text: 'up to 5 × mean', colour: '#414487' },
  { upTo: Number.POSITIVE_INFINITY, text: 'longer', colour: '#2a0a3a' },
];

const bandOf = (value: number): number => dwellBands.findIndex(({ upTo }) => value <= upTo);

/** Half-plane that the side view's upper half shows, rad. */
const azimuth = 0;

/** What a map covers, m, and how it is placed in its picture. */
interface View {
  readonly z: readonly [number, number];
  readonly r: readonly [number, number];
  readonly stretch: number;
  readonly at: readonly [left: number, top: number, width: number, height: number];
}

const legendHeight = 18;
const below = 32;

/** A view as wide as the page; radii stretched by a whole number so that channels can be seen. */
function viewOf(z: readonly [number, number], r: readonly [number, number], most: number, stretched: boolean): View {
  const room = fullWidth - 60;
  const scale = Math.min(room / (z[1] - z[0]), stretched ? Infinity : most / (r[1] - r[0]));
  const high = scale * (r[1] - r[0]);
  const stretch = stretched ? Math.max(1, Math.min(10, Math.floor(most / high))) : 1;
  const width = scale * (z[1] - z[0]);
  return { z, r, stretch, at: [40 + (room - width) / 2, legendHeight + 4, width, high * stretch] };
}

const placed = ({ z, r, at: [left, top, width, height] }: View, along: number, radius: number): Spot => [
  left + (width * (along - z[0])) / (z[1] - z[0]),
  top + height - (height * (radius - r[0])) / (r[1] - r[0]),
];

function legend(): Shape[] {
  const shapes: Shape[] = [];
  let [x, row] = [8, 0];
  for (const { text, colour } of dwellBands) {
    const wide = 16 + widthOf(text, 8) + 9;
    if (x > 8 && x + wide - 9 > fullWidth) [x, row] = [8, row + 1];
    shapes.push(areas([box(x, 2 + 13 * row, 12, 9)], colour, 'soft'), word(x + 16, 10 + 13 * row, text, { size: 8 }));
    x += wide;
  }
  return shapes;
}

/** An outline cut to the view's length. */
function cutLine(z: ArrayLike<number>, r: ArrayLike<number>, view: View): Spot[] {
  const [from, to] = view.z;
  const points: Spot[] = [];
  for (let i = 0; i < z.length; i++) {
    const next = i + 1 < z.length;
    if (z[i] >= from && z[i] <= to) points.push(placed(view, z[i], Math.max(view.r[0], r[i])));
    for (const bound of [from, to]) {
      if (!next || (z[i] - bound) * (z[i + 1] - bound) >= 0) continue;
      const radius = r[i] + ((r[i + 1] - r[i]) * (bound - z[i])) / (z[i + 1] - z[i]);
      points.push(placed(view, bound, Math.max(view.r[0], radius)));
    }
  }
  return points;
}

function outlines(revision: Revision, view: View): Shape[] {
  const { root, bore, cuts } = sideShape(revision);
  const inView = cuts.filter(({ x, y }) => y[0] > 0 && Math.min(...x) >= view.z[0] && Math.max(...x) <= view.z[1]);
  const flights = inView.map(({ x, y }) => Array.from(x, (z, i) => placed(view, z, Math.max(view.r[0], y[i]))));
  return [
    ...(flights.length > 0 ? [areas(flights, 'steel', 'ink')] : []),
    line(cutLine(bore.z, bore.r, view), 'ink', 1),
    line(cutLine(root.z, root.r, view), 'ink', 1),
  ];
}

/** A short line between two points of an axis. */
const stroke = (from: Spot, to: Spot): Shape => line([from, to], 'soft', 0.6);

function axes(view: View): Shape[] {
  const [left, top, width, height] = view.at;
  const bottom = top + height;
  const corner: Spot = [left, bottom];
  const zs = linearTicks(view.z[0] * 1000, view.z[1] * 1000, 8);
  const rs = linearTicks(view.r[0] * 1000, view.r[1] * 1000, 4);
  return [
    ...zs.flatMap((mm): Shape[] => {
      const [x] = placed(view, mm / 1000, 0);
      const number = word(x, bottom + 12, formatNumber(mm, 5), { anchor: 'middle' });
      return [stroke([x, bottom], [x, bottom + 3]), number];
    }),
    ...rs.flatMap((mm): Shape[] => {
      const [, y] = placed(view, 0, mm / 1000);
      return [stroke([left - 3, y], [left, y]), word(left - 5, y + 3, formatNumber(mm, 4), { anchor: 'end' })];
    }),
    stroke([left, top], corner),
    stroke(corner, [left + width, bottom]),
    word(left + width / 2, bottom + 25, 'Along the screw (mm)', { anchor: 'middle' }),
    word(left - 28, top + height / 2, 'Radius (mm)', { anchor: 'middle', turned: true }),
  ];
}

/** Numbers of the table of dead spots where the spots are seen. */
function spotMarks(design: Design, { dead, stations, fields }: Prediction, view: View): Shape[] {
  return dead.spots.flatMap((spot, i): Shape[] => {
    const { z, r } = spotPlace(spot, stations, fields?.channel ?? [], azimuth, design.screw.hand);
    if (z < view.z[0] || z > view.z[1] || r < view.r[0] || r > view.r[1]) return [];
    const [x, y] = placed(view, z, r);
    const ring = Array.from(
      { length: 20 },
      (_, k): Spot => [x + 6 * Math.cos((k * Math.PI) / 10), y + 6 * Math.sin((k * Math.PI) / 10)],
    );
    return [areas([ring], 'paper', 'ink'), word(x, y + 2.8, String(i + 1), { size: 8, anchor: 'middle' })];
  });
}

function map(
  revision: Revision,
  design: Design,
  prediction: Prediction,
  view: View,
  sections: readonly DwellSection[],
): Picture {
  const [, top, width, height] = view.at;
  const grid: Grid = { z: view.z, r: view.r, columns: Math.round(width), rows: Math.max(8, Math.round(height)) };
  const cells = bandRectangles(bandGrid(sections, grid, bandOf), grid, dwellBands.length, view.at);
  return {
    width: fullWidth,
    height: top + height + below,
    shapes: [
      ...legend(),
      ...cells.flatMap((pieces, i) => (pieces.length > 0 ? [areas(pieces, dwellBands[i].colour)] : [])),
      ...outlines(revision, view),
      ...axes(view),
      ...spotMarks(design, prediction, view),
    ],
  };
}

/** A map and how much its radii are stretched. */
export interface DwellPicture {
  readonly picture: Picture;
  readonly stretch: number;
}

/** Maps of the molten channel and of tip and nozzle; null where no field was solved. */
export function dwellPictures(
  revision: Revision,
  design: Design,
  prediction: Prediction,
): { readonly channel: DwellPicture | null; readonly head: DwellPicture | null } {
  const { fields, stations, residence } = prediction;
  if (!fields) return { channel: null, head: null };
  const headMean = residence.parts.reduce((sum, { part, mean }) => (part === 'channel' ? sum : sum + mean), 0);
  const sections = dwellSection(stations, fields, azimuth, design.screw.hand, headMean);
  const { bore } = sideShape(revision);
  const screwEnd = stations.z[stations.count - 1];
  const end = bore.z[bore.z.length - 1];
  const drawn = (view: View): DwellPicture => ({
    picture: map(revision, design, prediction, view, sections),
    stretch: view.stretch,
  });
  const from = meltStart(stations, fields.channel);
  const wide = Math.max(...bore.r);
  const inner = Math.min(...stations.rootRadius.filter((_, i) => stations.z[i] >= from));
  const floor = Math.max(0, inner - 0.1 * (wide - inner));
  return {
    channel: fields.channel.length > 0 ? drawn(viewOf([from, screwEnd], [floor, wide], 120, true)) : null,
    head: fields.head ? drawn(viewOf([screwEnd, end], [0, wide], 180, false)) : null,
  };
}
