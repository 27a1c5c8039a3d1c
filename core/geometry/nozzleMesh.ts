/** The nozzle's body as a closed triangle mesh: a solid of revolution with a stepped bore and a round outside. */

import type { Design } from '../design/types.ts';
import { placeSegments } from './bore.ts';
import {
  addQuad,
  addTrapezoid,
  addVertex,
  chordDeviation,
  createBuilder,
  finishMesh,
  type MeshBuilder,
} from './meshBuilder.ts';
import { frustum, revolvedVolume } from './revolved.ts';
import type { MeasuredMesh, MeshOptions } from './types.ts';

/** A plane of the bore: radius where the piece before it ends and where the next begins, m; equal without a step. */
interface BorePlane {
  readonly z: number;
  readonly before: number;
  readonly after: number;
}

/** The bore's planes from the barrel's end to the orifice; shoulders on the first and last plane bound the melt, not the body. */
function borePlanes(design: Design): BorePlane[] {
  const pieces = placeSegments(design).filter(({ start, end }) => end > start);
  const planes = pieces.map(({ start, startRadius }, i) => {
    return { z: start, before: pieces[i - 1]?.endRadius ?? startRadius, after: startRadius };
  });
  const last = pieces[pieces.length - 1];
  return last ? [...planes, { z: last.end, before: last.endRadius, after: last.endRadius }] : planes;
}

/** Volume of the nozzle's body, a cylinder less the bore, less the cut of `cutAngle` (rad), m³. */
export function nozzleBodyVolume(design: Design, cutAngle: number): number {
  const pieces = placeSegments(design).map((each) => frustum(each.start, each.end, each.startRadius, each.endRadius));
  const start = design.barrel.length;
  const end = pieces[pieces.length - 1]?.to ?? start;
  const cylinder = (Math.PI / 4) * design.nozzle.outerDiameter ** 2 * (end - start);
  return (cylinder - revolvedVolume(pieces, start, end)) * (1 - cutAngle / (2 * Math.PI));
}

/** Vertices of one half-plane. */
interface HalfPlane {
  /** per plane: bore before and after the step (one vertex without one) and outer surface */
  readonly before: readonly number[];
  readonly after: readonly number[];
  readonly outer: readonly number[];
}

function addHalfPlane(mesh: MeshBuilder, planes: readonly BorePlane[], outer: number, angle: number): HalfPlane {
  const point = (r: number, z: number) => addVertex(mesh, r * Math.cos(angle), r * Math.sin(angle), z);
  const before = planes.map((each) => point(each.before, each.z));
  const after = planes.map((each, i) =>
    each.after === each.before ? (before[i] as number) : point(each.after, each.z),
  );
  return { before, after, outer: planes.map((each) => point(outer, each.z)) };
}

/** Joins two neighbouring half-planes, `b` at the larger angle. */
function joinHalfPlanes(mesh: MeshBuilder, a: HalfPlane, b: HalfPlane): void {
  const at = (list: readonly number[], i: number) => list[i] as number;
  const end = a.outer.length - 1;
  for (let i = 0; i < end; i++) {
    addQuad(mesh, at(a.after, i), at(a.before, i + 1), at(b.before, i + 1), at(b.after, i));
    addQuad(mesh, at(a.outer, i), at(b.outer, i), at(b.outer, i + 1), at(a.outer, i + 1));
    const isStep = i > 0 && at(a.before, i) !== at(a.after, i);
    if (isStep) addQuad(mesh, at(a.before, i), at(a.after, i), at(b.after, i), at(b.before, i));
  }
  addQuad(mesh, at(a.after, 0), at(b.after, 0), at(b.outer, 0), at(a.outer, 0));
  addQuad(mesh, at(a.before, end), at(a.outer, end), at(b.outer, end), at(b.before, end));
}

/** Fills a half-plane where the cut ends; `facing` -1 where the body lies at larger angles. */
function fillHalfPlane(mesh: MeshBuilder, planes: readonly BorePlane[], half: HalfPlane, facing: 1 | -1): void {
  const side = (i: number, own: 'before' | 'after'): number[] => {
    const other = own === 'before' ? 'after' : 'before';
    const plane = planes[i] as BorePlane;
    const shared = plane[other] > plane[own] ? [half[other][i] as number] : [];
    return [half[own][i] as number, ...shared, half.outer[i] as number];
  };
  for (let i = 0; i + 1 < planes.length; i++) {
    const [near, far] = [side(i, 'after'), side(i + 1, 'before')];
    if (facing < 0) addTrapezoid(mesh, near, far);
    else addTrapezoid(mesh, far, near);
  }
}

/**
 * The nozzle's body from the barrel's end to the orifice, with a wedge of `cutAngle` (rad, 0 = none, below 2 pi) centred
 * on -x taken out as in the barrel; closed at every face. m, axis z. Volume equals `nozzleBodyVolume` to single precision.
 * Needs the outer diameter above every bore diameter. Empty where all segments have length 0.
 */
export function nozzleMesh(design: Design, options: MeshOptions, cutAngle: number): MeasuredMesh {
  const planes = borePlanes(design);
  if (planes.length === 0) return { positions: new Float32Array(0), indices: new Uint32Array(0), deviation: 0 };
  const outer = design.nozzle.outerDiameter / 2;
  const kept = 2 * Math.PI - cutAngle;
  const columns = Math.max(3, Math.ceil((kept / (2 * Math.PI)) * options.aroundCount));
  const isClosed = cutAngle === 0;
  const mesh = createBuilder();
  const halves = Array.from({ length: isClosed ? columns : columns + 1 }, (_, i) =>
    addHalfPlane(mesh, planes, outer, cutAngle / 2 + (kept * i) / columns),
  );
  for (let i = 0; i < columns; i++) {
    joinHalfPlanes(mesh, halves[i] as HalfPlane, halves[(i + 1) % halves.length] as HalfPlane);
  }
  if (!isClosed) {
    fillHalfPlane(mesh, planes, halves[0] as HalfPlane, -1);
    fillHalfPlane(mesh, planes, halves[columns] as HalfPlane, 1);
  }
  const { positions, indices, widening } = finishMesh(mesh, nozzleBodyVolume(design, cutAngle), 'x');
  return { positions, indices, deviation: chordDeviation(outer, kept / columns, widening) };
}
