/** The space between the last flight and the orifice as short rings and pipes in the order of flow. */

import type { Design } from '../design/types.ts';
import { tipOutline, tipShape } from '../geometry/tip.ts';
import { interpolateLinear } from '../math/interpolate.ts';

/** Least gap between tip and bore that is still computed, m; smaller ones count as this. */
const leastGap = 2e-5;

/** Straight pieces that stand for a hemisphere. */
const hemisphereChords = 6;

/** A stretch in which bore and core each run straight. m. */
export interface HeadPiece {
  readonly name: string;
  readonly part: 'tip' | 'nozzle';
  /** index into design.nozzle.segments, or -1 in the barrel */
  readonly segment: number;
  readonly z: number;
  readonly length: number;
  readonly boreStart: number;
  readonly boreEnd: number;
  readonly coreStart: number;
  readonly coreEnd: number;
}

/** A sudden change of bore. m. */
interface HeadStep {
  readonly name: string;
  readonly segment: number;
  readonly z: number;
  readonly from: number;
  readonly to: number;
}

/** Pieces and steps in the order of flow. */
export type HeadElement = ({ readonly kind: 'piece' } & HeadPiece) | ({ readonly kind: 'step' } & HeadStep);

/** The screw's end as a polyline, m; `end` is its foremost point. */
interface CoreLine {
  readonly z: readonly number[];
  readonly r: readonly number[];
  readonly end: number;
}

interface Bore {
  readonly name: string;
  readonly segment: number;
  readonly start: number;
  readonly end: number;
  readonly from: number;
  readonly to: number;
}

/**
 * Everything the melt passes after the last section of the screw.
 * @returns at least one element; radii in m
 */
export function headElements(design: Design): HeadElement[] {
  const tip = tipShape(design);
  const points = tipOutline(tip, hemisphereChords);
  const core: CoreLine = { z: points.map((point) => point.z), r: points.map((point) => point.r), end: tip.end };
  const elements: HeadElement[] = [];
  let bore = design.barrel.boreDiameter / 2;
  for (const stretch of boreStretches(design, tip.start)) {
    const { name, segment, start, end, from, to } = stretch;
    if (Math.abs(from - bore) > 1e-9) elements.push({ kind: 'step', name, segment, z: start, from: bore, to: from });
    if (end - start < 1e-9) {
      if (Math.abs(to - from) > 1e-9) elements.push({ kind: 'step', name, segment, z: start, from, to });
    } else for (const piece of cutAtKinks(stretch, core)) elements.push({ kind: 'piece', ...piece });
    bore = to;
  }
  return elements;
}

function boreStretches(design: Design, screwEnd: number): Bore[] {
  const radius = design.barrel.boreDiameter / 2;
  const stretches: Bore[] = [];
  let z = Math.max(design.barrel.length, screwEnd);
  if (z - screwEnd > 1e-9) {
    stretches.push({ name: 'barrel end', segment: -1, start: screwEnd, end: z, from: radius, to: radius });
  }
  design.nozzle.segments.forEach((each, segment) => {
    const from = each.startDiameter / 2;
    stretches.push({ name: each.name, segment, start: z, end: z + each.length, from, to: each.endDiameter / 2 });
    z += each.length;
  });
  return stretches;
}

function cutAtKinks(bore: Bore, core: CoreLine): HeadPiece[] {
  const cuts = [bore.start, ...core.z.filter((z) => z > bore.start + 1e-9 && z < bore.end - 1e-9), bore.end];
  const pieces: HeadPiece[] = [];
  for (let i = 0; i + 1 < cuts.length; i++) {
    const [start, end] = [cuts[i], cuts[i + 1]];
    if (end - start < 1e-9) continue;
    const boreAt = (z: number) => bore.from + ((bore.to - bore.from) * (z - bore.start)) / (bore.end - bore.start);
    // a hair inside the piece, so that the step of a flat tip falls on the right side
    const coreAt = (z: number) => (z > core.end ? 0 : interpolateLinear(core.z, core.r, z));
    const hair = (end - start) * 1e-6;
    const boreStart = boreAt(start);
    const boreEnd = boreAt(end);
    pieces.push({
      name: bore.name,
      part: bore.segment < 0 || start < core.end - 1e-9 ? 'tip' : 'nozzle',
      segment: bore.segment,
      z: start,
      length: end - start,
      boreStart,
      boreEnd,
      coreStart: Math.max(0, Math.min(coreAt(start + hair), boreStart - leastGap)),
      coreEnd: Math.max(0, Math.min(coreAt(end - hair), boreEnd - leastGap)),
    });
  }
  return pieces;
}
