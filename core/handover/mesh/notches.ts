/** Run-outs and relief grooves of the screw: where flights end, and rings that are cut there. Lengths mm. */

import type { Design } from '../../design/types.ts';
import { flightRadius, type PlacedSection, placeSections, rootRadiusAt } from '../../geometry/profile.ts';
import { fail, ok, type Result } from '../../result.ts';
import { formatNumber } from '../../units.ts';
import { numberOf } from '../check.ts';
import type { HandoverValues } from '../types.ts';
import type { Solid, SolidKit } from './solids.ts';

/** An end of an unbroken run of flights. */
interface FlightEnd {
  /** m */
  readonly z: number;
  /** 1 where the flights lie at larger z, -1 at smaller */
  readonly into: 1 | -1;
  /** root radius of the flights there, m */
  readonly root: number;
  /** length of the run of flights, m */
  readonly run: number;
  /** radius of what follows, m: 0 where nothing does */
  readonly neighbour: number;
}

const rootAt = ({ section, start }: PlacedSection, z: number): number => rootRadiusAt(section, z - start);

/** Runs of neighbouring flighted sections. */
function flightRuns(placed: readonly PlacedSection[]): PlacedSection[][] {
  const runs: PlacedSection[][] = [];
  placed.forEach((each, i) => {
    if (each.section.kind !== 'flighted') return;
    const before = placed[i - 1];
    if (before?.section.kind === 'flighted') runs[runs.length - 1]?.push(each);
    else runs.push([each]);
  });
  return runs;
}

/** Both ends of every run of flights, along z. */
function flightEnds(design: Design): FlightEnd[] {
  const placed = placeSections(design.screw);
  const { shankDiameter, shankLength } = design.screw;
  return flightRuns(placed).flatMap((run) => {
    const [first, last] = [run[0], run[run.length - 1]];
    const [before, after] = [placed[first.index - 1], placed[last.index + 1]];
    const length = last.end - first.start;
    const shank = first.index === 0 && shankLength > 0 ? shankDiameter / 2 : 0;
    const [root, lastRoot] = [rootAt(first, first.start), rootAt(last, last.end)];
    return [
      { z: first.start, into: 1, root, run: length, neighbour: before ? rootAt(before, before.end) : shank },
      { z: last.end, into: -1, root: lastRoot, run: length, neighbour: after ? rootAt(after, after.start) : 0 },
    ] as const;
  });
}

/** Outline in r and z turned counter-clockwise, so that revolving gives a positive body. */
function wound(points: readonly (readonly [number, number])[]): (readonly [number, number])[] {
  const area = points.reduce((sum, [r, z], i) => {
    const [r2, z2] = points[(i + 1) % points.length];
    return sum + r * z2 - r2 * z;
  }, 0);
  return area > 0 ? [...points] : [...points].reverse();
}

/** Chords of a turn of the cut rings: a sag of 0.0002 of the radius. */
const chords = 160;
/** How far rings reach past the crest, mm. */
const beyond = 5;
/** A groove may leave this share of the root's radius. */
const leastLeft = 0.6;

/** What is cut off, and what to say of it. */
export interface Notches {
  readonly rings: readonly Solid[];
  readonly facts: readonly { readonly label: string; readonly text: string }[];
}

function runoutRing(kit: SolidKit, end: FlightEnd, crest: number, length: number): Solid {
  const [z, root] = [1000 * end.z, 1000 * end.root];
  const inner = z + end.into * length;
  const outline = wound([
    [root, z],
    [crest + beyond, z],
    [crest + beyond, inner],
    [crest, inner],
  ]);
  return kit.Manifold.revolve([outline], chords);
}

function reliefRing(kit: SolidKit, end: FlightEnd, crest: number, width: number, depth: number): Solid {
  const [z, floor] = [1000 * end.z, 1000 * end.root - depth];
  const inner = z + end.into * width;
  const outline = wound([
    [floor, z],
    [crest + beyond, z],
    [crest + beyond, inner],
    [floor, inner],
  ]);
  return kit.Manifold.revolve([outline], chords);
}

const tooMuch = (id: string, what: string, value: number, most: number): Result<never> =>
  fail({
    path: ['options', id],
    code: 'handover-option',
    message: what,
    value: `${formatNumber(value, 6)} mm`,
    allowed: `0 to ${formatNumber(Math.max(0, most), 4)} mm on this screw`,
    remedy: 'Take less.',
  });

/** Rings to cut off the screw by the options; issues where an end has no room for them. */
export function notchesOf(kit: SolidKit, design: Design, values: HandoverValues): Result<Notches> {
  const [runout, width, depth] = ['runout', 'reliefWidth', 'reliefDepth'].map((id) => numberOf(values, id));
  const ends = flightEnds(design);
  // a free end at the drive side is cut off by the stock anyway
  const faded = runout > 0 ? ends.filter(({ neighbour, into }) => neighbour > 0 || into < 0) : [];
  const grooved = width > 0 && depth > 0 ? ends.filter(({ neighbour, root }) => neighbour >= root) : [];
  const shortest = 1000 * Math.min(...ends.map(({ run }) => run / 2));
  if (faded.length > 0 && runout > shortest)
    return tooMuch('runout', 'The flights are too short for this run-out.', runout, shortest);
  if (grooved.length > 0 && width > shortest)
    return tooMuch('reliefWidth', 'The flights are too short for this groove.', width, shortest);
  const thinnest = 1000 * Math.min(...grooved.map(({ root }) => root));
  const deepest = thinnest * (1 - leastLeft);
  if (grooved.length > 0 && depth > deepest)
    return tooMuch('reliefDepth', 'The groove would leave too little of the root.', depth, deepest);
  const crest = 1000 * flightRadius(design);
  const facts = [];
  if (runout > 0) facts.push({ label: 'Run-outs', text: `${faded.length} ends of flights over ${runout} mm` });
  if (width > 0 && depth > 0) {
    const left =
      grooved.length > 0
        ? `, least Ø ${formatNumber(2 * (thinnest - depth), 4)} mm`
        : ': no flight ends against a shoulder';
    facts.push({ label: 'Relief grooves', text: `${grooved.length}${left}` });
  }
  const rings = [
    ...faded.map((end) => runoutRing(kit, end, crest, runout)),
    ...grooved.map((end) => reliefRing(kit, end, crest, width, depth)),
  ];
  return ok({ rings, facts });
}
