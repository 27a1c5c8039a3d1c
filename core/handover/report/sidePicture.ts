/** The machine from the side as a picture, true to scale: barrel cut open, screw with its flights, zones and sections. */

import { type HeadProfile, headProfile, radiusAt } from '../../compare/headProfile.ts';
import type { Design } from '../../design/types.ts';
import type { AxialOutline, PlaneOutline } from '../../geometry/types.ts';
import { sideShape } from '../../present/sideShape.ts';
import type { Revision } from '../../project/schema.ts';
import { formatNumber, formatQuantity } from '../../units.ts';
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
import { linearTicks } from './ticks.ts';

type Shape = PathShape | TextShape;

/** From metres along and away from the axis to the picture. */
interface Place {
  readonly scale: number;
  readonly middle: number;
  readonly x: (z: number) => number;
  readonly y: (r: number) => number;
}

const highest = 150;
const above = 26;
const below = 44;

function placeOf({ screw, outside, end }: HeadProfile): Place {
  const from = screw.z[0];
  const half = Math.max(...outside.r);
  const scale = Math.min((fullWidth - 8) / (end - from), highest / (2 * half));
  const left = (fullWidth - scale * (end - from)) / 2;
  const middle = above + scale * half;
  return { scale, middle, x: (z) => left + scale * (z - from), y: (r) => middle - scale * r };
}

const outline = ({ z, r }: AxialOutline, { x, y }: Place, side: 1 | -1): Spot[] =>
  Array.from(z, (at, i): Spot => [x(at), y(side * r[i])]);

const polygon = ({ x: along, y: across }: PlaneOutline, { x, y }: Place): Spot[] =>
  Array.from(along, (z, i): Spot => [x(z), y(across[i])]);

/** Barrel and nozzle cut by the plane; the feed opening leaves a gap above. */
function walls(profile: HeadProfile, place: Place): Shape[] {
  const { bore, outside, feedOpening } = profile;
  const { x, y } = place;
  const wall = (side: 1 | -1): Spot[] => [...outline(outside, place, side), ...outline(bore, place, side).reverse()];
  const top = y(Math.max(...outside.r));
  const inner = y(bore.r[0]);
  // a neck may end at the opening or run through it
  const before = y(radiusAt(outside, feedOpening.start, 'before'));
  const after = y(radiusAt(outside, feedOpening.end, 'after'));
  const width = x(feedOpening.end) - x(feedOpening.start);
  const opening = box(x(feedOpening.start), top - 1, width, inner - top + 1);
  return [
    areas([wall(1), wall(-1)], 'steel', 'ink'),
    areas([opening], 'paper'),
    line(
      [
        [opening[0][0], before],
        [opening[0][0], inner],
      ],
      'ink',
      0.6,
    ),
    line(
      [
        [opening[1][0], after],
        [opening[1][0], inner],
      ],
      'ink',
      0.6,
    ),
    word((opening[0][0] + opening[1][0]) / 2, top - 4, 'feed', { size: 7, anchor: 'middle', tone: 'soft' }),
  ];
}

function screwShapes(revision: Revision, profile: HeadProfile, place: Place): Shape[] {
  const { cuts, crests } = sideShape(revision);
  const body = [...outline(profile.screw, place, 1), ...outline(profile.screw, place, -1).reverse()];
  return [
    areas([body], 'paper', 'ink'),
    ...crests.map((crest) => areas([polygon(crest, place)], 'grid', 'ink')),
    areas(
      cuts.map((cut) => polygon(cut, place)),
      'soft',
      'ink',
    ),
    line(
      [
        [place.x(profile.screw.z[0]) - 3, place.middle],
        [place.x(profile.end) + 3, place.middle],
      ],
      'soft',
      0.4,
      [8, 2, 2, 2],
    ),
  ];
}

/** Heated, cooled and plain stretches as bars under the barrel; names where there is room. */
function zoneBars({ barrel, nozzle }: Design, profile: HeadProfile, place: Place): Shape[] {
  const top = place.y(-Math.max(...profile.outside.r)) + 5;
  const bar = (from: number, to: number, text: string): Shape[] => {
    const [left, right] = [place.x(from), place.x(to)];
    const fits = widthOf(text, 7) < right - left - 2;
    return [
      line(
        [
          [left + 1, top],
          [right - 1, top],
        ],
        'ink',
        2,
      ),
      ...(fits ? [word((left + right) / 2, top + 9, text, { size: 7, anchor: 'middle' })] : []),
    ];
  };
  return [
    ...barrel.zones.flatMap((zone) => {
      if (zone.kind === 'insulated') return bar(zone.start, zone.end, 'insulated');
      const set = zone.kind === 'heated' ? zone.setTemperature : zone.coolantTemperature;
      return bar(zone.start, zone.end, formatQuantity(set, '°C', 3));
    }),
    ...bar(profile.barrelEnd, profile.end, formatQuantity(nozzle.setTemperature, '°C', 3)),
  ];
}

/** Millimetres from the start of the bore. */
function ruler({ end, outside }: HeadProfile, place: Place): Shape[] {
  const y = place.y(-Math.max(...outside.r)) + 20;
  const marks = linearTicks(0, end * 1000, 8);
  return [
    line(
      [
        [place.x(0), y],
        [place.x(end), y],
      ],
      'soft',
      0.6,
    ),
    ...marks.flatMap((mm): Shape[] => [
      line(
        [
          [place.x(mm / 1000), y],
          [place.x(mm / 1000), y + 4],
        ],
        'soft',
        0.6,
      ),
      word(place.x(mm / 1000), y + 13, `${formatNumber(mm, 5)}${mm === 0 ? ' mm' : ''}`, {
        size: 7,
        anchor: 'middle',
        tone: 'soft',
      }),
    ]),
  ];
}

/** Numbers of the sections over the barrel, ends marked. */
function sectionMarks({ screw }: Design, profile: HeadProfile, place: Place): Shape[] {
  const top = place.y(Math.max(...profile.outside.r));
  let start = 0;
  return screw.sections.flatMap(({ length }, i): Shape[] => {
    const [left, right] = [place.x(start), place.x(start + length)];
    start += length;
    const edge = line(
      [
        [right, top - 12],
        [right, top - 4],
      ],
      'soft',
      0.6,
    );
    return [edge, word((left + right) / 2, top - 14, String(i + 1), { size: 8, anchor: 'middle' })];
  });
}

/** The side view of a design. */
export function sidePicture(revision: Revision, design: Design): Picture {
  const profile = headProfile(design);
  const place = placeOf(profile);
  return {
    width: fullWidth,
    height: place.y(-Math.max(...profile.outside.r)) + below,
    shapes: [
      ...walls(profile, place),
      ...screwShapes(revision, profile, place),
      ...zoneBars(design, profile, place),
      ...ruler(profile, place),
      ...sectionMarks(design, profile, place),
    ],
  };
}
