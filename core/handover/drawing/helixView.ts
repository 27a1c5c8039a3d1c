/**
 * The flighted screw seen from the side: its outline and the edges of the flight that are not hidden. Everything follows
 * from the flight profile alone: at one z the surface is known as radius over angle, and a line of sight stays in that
 * plane. Metres and rad here; the viewer stands at -x, z runs to the right and y up.
 */

import type { Design } from '../../design/types.ts';
import { type FlightProfile, flightProfileAt } from '../../geometry/flightProfile.ts';
import { flightAngle, flightRadius, leadAt, type PlacedSection, rootRadiusAt } from '../../geometry/profile.ts';

/** A point of the view: z along the axis, y up, m. */
export interface SidePoint {
  readonly z: number;
  readonly y: number;
}

/** The surface in one transverse plane. */
interface Plane {
  readonly profile: FlightProfile | null;
  readonly root: number;
  /** angle of the first flight's centre */
  readonly phase: number;
}

function planeAt(design: Design, placed: PlacedSection, z: number): Plane {
  const { section, start } = placed;
  const root = rootRadiusAt(section, z - start);
  if (section.kind === 'plain') return { profile: null, root, phase: 0 };
  const profile = flightProfileAt(section, z - start, flightRadius(design));
  return { profile, root: profile.floorRadius, phase: flightAngle(placed, z) };
}

/** Radius of the flight at an axial distance `x` >= 0 from its middle, m; inverse of `halfWidthAt`. */
export function radiusAtOffset(profile: FlightProfile, x: number): number {
  const { halfLand, halfFoot, halfBase, fillet, flank, filletHeight, floorRadius, flightRadius: crest } = profile;
  if (x <= halfLand) return crest;
  if (x >= halfBase) return floorRadius;
  const top = halfFoot - filletHeight * Math.tan(flank);
  if (x <= top) return crest - (x - halfLand) / Math.tan(flank);
  const across = halfBase - x;
  return floorRadius + fillet - Math.sqrt(Math.max(fillet ** 2 - across ** 2, 0));
}

/** Radius of the surface at an angle in a plane. */
function surface({ profile, root, phase }: Plane, angle: number): number {
  if (!profile) return root;
  const between = (2 * Math.PI) / profile.starts;
  const turned = (angle - phase) / between;
  const off = Math.abs(turned - Math.round(turned)) * between;
  return radiusAtOffset(profile, (off * profile.lead) / (2 * Math.PI));
}

/** Axial offsets of a flight's corners and a few points between. */
function offsets({ halfLand, halfFoot, halfBase }: FlightProfile): number[] {
  const shares = [0, 0.2, 0.4, 0.6, 0.8, 1];
  return [
    halfLand,
    ...shares.map((share) => halfLand + share * (halfFoot - halfLand)),
    ...shares.map((share) => halfFoot + share * (halfBase - halfFoot)),
  ];
}

/** Highest point of the section in a plane when looked at with `up` = 1, lowest with -1; always positive, m. */
function reach(plane: Plane, up: 1 | -1): number {
  let most = surface(plane, (up * Math.PI) / 2);
  const { profile } = plane;
  if (!profile) return most;
  const turn = (2 * Math.PI) / profile.lead;
  for (let flight = 0; flight < profile.starts; flight++) {
    const centre = plane.phase + (2 * Math.PI * flight) / profile.starts;
    for (const x of offsets(profile)) {
      const r = radiusAtOffset(profile, x);
      most = Math.max(most, up * r * Math.sin(centre + turn * x), up * r * Math.sin(centre - turn * x));
    }
  }
  return most;
}

/** Stretch of a section's z at even distances, m; at least `perLead` points a turn. */
function samples(placed: PlacedSection, from: number, to: number, perLead: number): number[] {
  const { section } = placed;
  if (section.kind === 'plain') return [from, to];
  const lead = Math.min(leadAt(section, from - placed.start), leadAt(section, to - placed.start));
  const n = Math.max(8, Math.ceil(((to - from) / lead) * perLead));
  return Array.from({ length: n + 1 }, (_, i) => from + ((to - from) * i) / n);
}

/** Upper or lower edge of the view along a stretch of one section. `y` carries its sign. */
export function envelope(
  design: Design,
  placed: PlacedSection,
  from: number,
  to: number,
  up: 1 | -1,
  perLead = 48,
): SidePoint[] {
  // a left-hand screw is the mirror image in y
  const side = design.screw.hand === 'left' ? (-up as 1 | -1) : up;
  return samples(placed, from, to, perLead).map((z) => ({ z, y: up * reach(planeAt(design, placed, z), side) }));
}

/** Whether nothing stands between the point at (r, angle) and the viewer at -x. */
function isSeen(plane: Plane, r: number, angle: number, crest: number): boolean {
  const y = r * Math.sin(angle);
  const edge = Math.sqrt(Math.max(crest ** 2 - y ** 2, 0));
  const start = r * Math.cos(angle);
  const steps = Math.max(4, Math.ceil(((start + edge) / (2 * crest)) * 32));
  for (let i = 1; i <= steps; i++) {
    const x = start - ((start + edge) * i) / steps;
    const there = Math.hypot(x, y);
    if (there < surface(plane, Math.atan2(y, x)) - 2e-3 * crest) return false;
  }
  return true;
}

/** Edges of the flight that are followed: the crest's two, and the two at the floor where no fillet runs out. */
const edges: readonly { readonly kind: 'crest' | 'floor'; readonly side: 1 | -1 }[] = [
  { kind: 'crest', side: -1 },
  { kind: 'crest', side: 1 },
  { kind: 'floor', side: -1 },
  { kind: 'floor', side: 1 },
];

/** One edge of one flight, split where it is hidden. */
function edgeRuns(
  design: Design,
  placed: PlacedSection,
  planes: readonly { z: number; plane: Plane }[],
  flight: number,
  edge: (typeof edges)[number],
): SidePoint[][] {
  const runs: SidePoint[][] = [];
  const crest = flightRadius(design);
  const mirror = design.screw.hand === 'left' ? -1 : 1;
  let run: SidePoint[] = [];
  const starts = placed.section.kind === 'flighted' ? placed.section.starts : 1;
  for (const { z, plane } of planes) {
    const { profile, phase } = plane;
    if (!profile) continue;
    const x = edge.side * (edge.kind === 'crest' ? profile.halfLand : profile.halfBase);
    const angle = phase + (2 * Math.PI * flight) / starts + (2 * Math.PI * x) / profile.lead;
    const r = edge.kind === 'crest' ? crest : profile.floorRadius;
    if (isSeen(plane, r, angle, crest)) run.push({ z, y: mirror * r * Math.sin(angle) });
    else if (run.length > 0) {
      runs.push(run);
      run = [];
    }
  }
  return [...runs, run].filter(({ length }) => length > 1);
}

/** Visible edges of the flight along a stretch of one flighted section. */
export function flightEdges(
  design: Design,
  placed: PlacedSection,
  from: number,
  to: number,
  perLead = 48,
): { kind: 'crest' | 'floor'; points: SidePoint[] }[] {
  const { section } = placed;
  if (section.kind === 'plain') return [];
  const planes = samples(placed, from, to, perLead).map((z) => ({ z, plane: planeAt(design, placed, z) }));
  return Array.from({ length: section.starts }, (_, flight) => flight).flatMap((flight) =>
    edges.flatMap((edge) =>
      edgeRuns(design, placed, planes, flight, edge).map((points) => ({ kind: edge.kind, points })),
    ),
  );
}
