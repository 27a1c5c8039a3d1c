/** Where grains begin before they settle, and how many of them fill the room. */

import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import type { Design } from '../../design/types.ts';
import type { GrainRoom } from './room.ts';
import type { Grains } from './settle.ts';

/** Longest rod drawn, in diameters: longer granules are bundles of needles to which this picture does not apply. */
export const longestDrawn = 3;

/** Numbers from 0 to 1, the same for the same seed. */
export type Draw = () => number;

/** A source of numbers. */
export function drawFrom(seed: number): Draw {
  const random = xoroshiro128plus(seed | 0);
  return () => uniformFloat64(random);
}

/** Area of a disc of radius r within `half` of a line through its middle, m². */
function stripOfDisc(r: number, half: number): number {
  if (half >= r) return Math.PI * r * r;
  return 2 * (half * Math.sqrt(r * r - half * half) + r * r * Math.asin(half / r));
}

/** Height of granules drawn above the hopper's seat, m. */
export const mouthHeight = ({ hopper, material }: Design): number =>
  Math.min(hopper.height, Math.max(4 * material.grain.d90, 0.006));

/** Volumes of a room, m³: channel, and opening with the hopper's mouth. */
export function roomVolumes(room: GrainRoom, design: Design): { readonly channel: number; readonly above: number } {
  const steps = 60;
  const step = (room.to - room.from) / steps;
  let channel = 0;
  for (let i = 0; i < steps; i++) {
    const { root, flight } = room.screw(room.from + (i + 0.5) * step);
    const open = flight ? 1 - (2 * flight.halfLand) / flight.pitch : 1;
    channel += open * step * (stripOfDisc(room.bore, room.slab) - stripOfDisc(root, room.slab));
  }
  const opening = 4 * room.halfLength * Math.min(room.halfWidth, room.slab) * Math.max(0, room.seat - 0.9 * room.bore);
  const mouth = stripOfDisc(room.mouth, room.slab) * mouthHeight(design);
  return { channel: Math.max(0, channel), above: opening + mouth };
}

/** Volume of a rod with round ends, m³. */
export const grainVolume = (diameter: number, aspect: number): number =>
  Math.PI * diameter ** 3 * (1 / 6 + (aspect - 1) / 4);

/** A point in the channel, any radius and angle; the screw pushes it where it belongs. */
function inChannel(room: GrainRoom, ball: number, draw: Draw): readonly [number, number, number] {
  const z = room.from + ball + draw() * Math.max(0, room.to - room.from - 2 * ball);
  const { root } = room.screw(z);
  const r = Math.sqrt(root ** 2 + draw() * (room.bore ** 2 - root ** 2));
  const angle = 2 * Math.PI * draw();
  if (r <= room.slab) return [r * Math.cos(angle), r * Math.sin(angle), z];
  const x = room.slab * (2 * draw() - 1);
  return [x, (angle < Math.PI ? 1 : -1) * Math.sqrt(Math.max(0, r * r - x * x)), z];
}

/** A point in the opening or above it; higher by what grains take before they settle. */
function aboveChannel(room: GrainRoom, height: number, ball: number, draw: Draw): readonly [number, number, number] {
  const y = room.bore + ball + draw() ** 1.2 * 1.5 * (room.seat - room.bore + height);
  const narrow = y < room.seat + ball;
  const [x, z] = [2 * draw() - 1, 2 * draw() - 1];
  const across = Math.min(narrow ? room.halfWidth : 0.7 * room.mouth, room.slab);
  const along = narrow ? room.halfLength : 0.7 * room.mouth;
  return [x * Math.max(0, across - ball), y, room.middle + z * Math.max(0, along - ball)];
}

/** Grains of given sizes at their first places; the first `below` of them in the channel. */
export function scattered(
  room: GrainRoom,
  sizes: Float64Array,
  below: number,
  aspect: number,
  height: number,
  draw: Draw,
): Grains {
  const count = sizes.length;
  const ends = new Float64Array(6 * count);
  const length = sizes.map((size) => (aspect - 1) * size);
  for (let i = 0; i < count; i++) {
    const ball = sizes[i] / 2;
    const [x, y, z] = i < below ? inChannel(room, ball, draw) : aboveChannel(room, height, ball, draw);
    const [tilt, turn] = [2 * draw() - 1, 2 * Math.PI * draw()];
    const level = Math.sqrt(1 - tilt * tilt);
    const [dx, dy, dz] = [level * Math.cos(turn), tilt, level * Math.sin(turn)].map((d) => (d * length[i]) / 2);
    ends.set([x - dx, y - dy, z - dz, x + dx, y + dy, z + dz], 6 * i);
  }
  return { count, ends, radius: sizes.map((size) => size / 2), length };
}

/** Puts values into an order drawn by lot, in place (Fisher and Yates). */
export function shuffle(values: Float64Array, draw: Draw): Float64Array {
  for (let i = values.length - 1; i > 0; i--) {
    const other = Math.floor(draw() * (i + 1));
    [values[i], values[other]] = [values[other], values[i]];
  }
  return values;
}
