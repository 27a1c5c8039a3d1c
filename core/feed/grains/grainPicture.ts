/** Granules drawn to scale in hopper mouth, feed opening and channel: sizes from the granulate, places invented. */

import type { Design } from '../../design/types.ts';
import type { Stations } from '../../geometry/types.ts';
import { feedPlace } from '../capacity.ts';
import { type GrainPassage, grainPassages } from '../grainFit.ts';
import { depthInSolid, type GrainRoom, grainRoom, pushInside } from './room.ts';
import { drawFrom, grainVolume, longestDrawn, mouthHeight, roomVolumes, scattered, shuffle } from './scatter.ts';
import { closePairs, type Grains, keepLength, overlapOf, pushApart, pushEnds } from './settle.ts';
import { grainSizes } from './sizes.ts';

/** Granules for a picture; no number of the prediction comes from them. SI. */
export interface GrainPicture {
  readonly count: number;
  /** middle of each, xyz, machine's frame (axis z, +y up) */
  readonly middles: Float32Array;
  /** unit vector along each */
  readonly along: Float32Array;
  readonly diameters: Float32Array;
  /** length over diameter as drawn */
  readonly aspect: number;
  /** 1 where the granule is larger than the narrowest passage */
  readonly tooLarge: Uint8Array;
  readonly tooLargeCount: number;
  /** the narrowest passage of those that granules must pass, and its name */
  readonly passage: GrainPassage;
  /** half the thickness of the slice that is drawn about the upright plane through the axis; null: all */
  readonly slab: number | null;
  /** granules so fine that they cannot be drawn one by one: nothing is drawn */
  readonly tooFine: boolean;
  /** the hopper's mouth as far as it is drawn */
  readonly mouth: {
    readonly seat: number;
    readonly z: number;
    readonly low: number;
    readonly high: number;
    readonly height: number;
  };
}

/** Largest overlap of two granules that is drawn, as a share of the smaller diameter. */
export const overlapDrawn = 0.08;

/** Share of the room that settled granules fill, for counting them: bulk over solid density, within what settling reaches. */
const packing = ({ material }: Design): number =>
  Math.min(0.58, Math.max(0.3, material.bulkDensity / material.solidDensity));

/** Share by which a wall loosens what lies at it, per diameter over the gap (own estimate; dense beds lose about half a layer). */
const loosening = 0.6;

/** Granules in the channel and above it. */
function counts(design: Design, room: GrainRoom, aspect: number) {
  const { d50 } = design.material.grain;
  const { channel, above } = roomVolumes(room, design);
  const gap = room.bore - room.screw(room.middle).root;
  const each = grainVolume(d50, aspect) / packing(design);
  return {
    channel: Math.round((channel / each) * Math.max(0.3, 1 - (loosening * d50) / gap)),
    above: Math.round(
      (above / each) * Math.max(0.3, 1 - (loosening * d50) / (2 * Math.min(room.halfWidth, room.slab))),
    ),
  };
}

/** The thinnest slice that holds whole granules and at most `most` of them; Infinity where all are few enough. */
function slabFor(design: Design, aspect: number, most: number): number | null {
  const { d90 } = design.material.grain;
  const count = (slab: number) => {
    const { channel, above } = counts(design, grainRoom(design, slab), aspect);
    return channel + above;
  };
  if (count(Number.POSITIVE_INFINITY) <= most) return Number.POSITIVE_INFINITY;
  let low = 0.6 * d90 * aspect;
  if (count(low) > most) return null;
  let high = design.hopper.outletDiameter;
  for (let i = 0; i < 24; i++) {
    const middle = (low + high) / 2;
    if (count(middle) > most) high = middle;
    else low = middle;
  }
  return low;
}

/** Rounds of settling; in the last share of them nothing sinks any more. */
const rounds = { all: 220, still: 110, pairsEvery: 6 } as const;

function settle(grains: Grains, room: GrainRoom, hand: 1 | -1, step: number): void {
  let pairs = closePairs(grains);
  for (let round = 0; round < rounds.all; round++) {
    if (round > 0 && round % rounds.pairsEvery === 0) pairs = closePairs(grains);
    const sink = round < rounds.all - rounds.still ? step : 0;
    for (let i = 0; i < grains.count; i++) {
      const at = 6 * i;
      if (grains.ends[at + 1] > 0.8 * room.bore) {
        grains.ends[at + 1] -= sink;
        grains.ends[at + 4] -= sink;
      }
    }
    for (let sweep = 0; sweep < 2; sweep++) {
      for (let k = 0; k < pairs.length; k += 2) pushApart(grains, pairs[k], pairs[k + 1]);
      for (let i = 0; i < grains.count; i++) {
        keepLength(grains, i);
        pushEnds(grains, i, (p, ball) => pushInside(room, hand, p, ball));
      }
    }
  }
}

/** Granules that may be shown: none in another or in something solid by more than is drawn, none above the heap. */
function shown(grains: Grains, room: GrainRoom, hand: 1 | -1, top: number): number[] {
  const dropped = new Uint8Array(grains.count);
  const { ends, radius } = grains;
  for (let i = 0; i < grains.count; i++) {
    keepLength(grains, i);
    pushEnds(grains, i, (p, ball) => {
      if (depthInSolid(room, hand, p, ball) > 0.12 * ball || p[1] > top) dropped[i] = 1;
    });
  }
  const pairs = closePairs(grains);
  for (let k = 0; k < pairs.length; k += 2) {
    const [i, j] = [pairs[k], pairs[k + 1]];
    const least = 2 * Math.min(radius[i], radius[j]);
    if (dropped[i] || dropped[j] || overlapOf(grains, i, j) <= overlapDrawn * least) continue;
    dropped[ends[6 * i + 1] > ends[6 * j + 1] ? i : j] = 1;
  }
  return Array.from({ length: grains.count }, (_, i) => i).filter((i) => !dropped[i]);
}

/** Sizes of all granules: first those in the channel, which only granules that fit it reach, then the rest. */
function sizesFor(design: Design, room: GrainRoom, aspect: number, limit: number, draw: () => number) {
  const { grain } = design.material;
  const wanted = counts(design, room, aspect);
  const fit = grainSizes(grain, wanted.channel).filter((size) => size <= limit);
  const rest = shuffle(grainSizes(grain, wanted.above), draw);
  const sizes = new Float64Array(fit.length + rest.length);
  sizes.set(shuffle(fit, draw));
  sizes.set(rest, fit.length);
  return { sizes, below: fit.length };
}

function pictureOf(grains: Grains, kept: readonly number[], limit: number) {
  const count = kept.length;
  const middles = new Float32Array(3 * count);
  const along = new Float32Array(3 * count);
  const diameters = Float32Array.from(kept, (i) => 2 * grains.radius[i]);
  const tooLarge = Uint8Array.from(kept, (i) => (2 * grains.radius[i] > limit ? 1 : 0));
  kept.forEach((i, n) => {
    const e = grains.ends.subarray(6 * i, 6 * i + 6);
    const size = Math.hypot(e[3] - e[0], e[4] - e[1], e[5] - e[2]);
    for (let k = 0; k < 3; k++) {
      middles[3 * n + k] = (e[k] + e[3 + k]) / 2;
      along[3 * n + k] = size > 1e-9 ? (e[3 + k] - e[k]) / size : k === 1 ? 1 : 0;
    }
  });
  return { count, middles, along, diameters, tooLarge, tooLargeCount: tooLarge.reduce((sum, one) => sum + one, 0) };
}

/**
 * Granules in the hopper's mouth, the feed opening and the channel up to a turn and a half past it. They sink from
 * drawn places until they rest: an own relaxation that only serves a picture.
 * @param seed whole number; the same picture for the same seed
 * @param most granules drawn; finer granulate is drawn as a thin slice
 */
export function grainPicture(design: Design, stations: Stations, seed = 1, most = 1000): GrainPicture {
  const aspect = Math.min(longestDrawn, Math.max(1, design.material.grain.aspectRatio));
  const place = feedPlace(design, stations);
  const passages = grainPassages(design, place);
  const passage = passages.reduce((least, each) => (each.size < least.size ? each : least));
  const depth = passages.find(({ id }) => id === 'depth')?.size ?? passage.size;
  const slab = slabFor(design, aspect, most);
  const room = grainRoom(design, slab ?? Number.POSITIVE_INFINITY);
  const height = mouthHeight(design);
  const mouth = { seat: room.seat, z: room.middle, low: room.mouth, high: room.mouth + height * room.widening, height };
  const shared = { aspect, passage, mouth, slab: slab === null || !Number.isFinite(slab) ? null : slab };
  if (slab === null) return { ...shared, ...pictureOf(noGrains, [], passage.size), tooFine: true };
  const draw = drawFrom(seed);
  const { sizes, below } = sizesFor(design, room, aspect, Math.min(depth, passage.size), draw);
  const grains = scattered(room, sizes, below, aspect, height, draw);
  const hand = design.screw.hand === 'left' ? -1 : 1;
  settle(grains, room, hand, 0.16 * design.material.grain.d50);
  const kept = shown(grains, room, hand, room.seat + 1.35 * height);
  return { ...shared, ...pictureOf(grains, kept, passage.size), tooFine: false };
}

const noGrains: Grains = {
  count: 0,
  ends: new Float64Array(),
  radius: new Float64Array(),
  length: new Float64Array(),
};
