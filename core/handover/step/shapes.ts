/** Faces, wires and bodies in the kernel, from splines and flat regions. */

import type { FlatEdge, FlatRegion } from './junction.ts';
import type { BrepKernel, KernelObject, KernelPoint, KernelShape } from './kernel.ts';
import type { OutlinePiece, Polar } from './outline.ts';
import { arcBasis, type CubicFit, cubicFit, type SplineBasis, straight } from './splines.ts';
import type { FlightZone, TurnedZone } from './zones.ts';

/** A kernel with the hand of what is built: points are mirrored in y for a left-hand screw. */
export interface Builder {
  readonly kernel: BrepKernel;
  readonly mirror: 1 | -1;
}

const point = ({ kernel, mirror }: Builder, x: number, y: number, z: number): KernelPoint =>
  new kernel.gp_Pnt(x, mirror * y, z);

const polarPoint = (builder: Builder, { theta, r }: Polar, z: number): KernelPoint =>
  point(builder, r * Math.cos(theta), r * Math.sin(theta), z);

function knotRows({ kernel }: Builder, basis: SplineBasis): { knots: KernelObject; counts: KernelObject } {
  const knots = new kernel.NCollection_Array1_double(1, basis.knots.length);
  const counts = new kernel.NCollection_Array1_int(1, basis.knots.length);
  basis.knots.forEach((knot, i) => {
    knots.SetValue(i + 1, knot);
  });
  basis.multiplicities.forEach((count, i) => {
    counts.SetValue(i + 1, count);
  });
  return { knots, counts };
}

/** Poles of one piece across, with weights: x, y, w, x and y not yet times w. */
function polesAcross(piece: OutlinePiece, arcs: number): { x: number; y: number; w: number }[] {
  if (piece.kind === 'curve') {
    return Array.from(piece.x, (x, i) => ({ x, y: piece.y[i] as number, w: 1 }));
  }
  const { from, to } = piece;
  const at = (theta: number, r: number, w: number) => ({ x: r * Math.cos(theta), y: r * Math.sin(theta), w });
  if (piece.kind === 'line') return [at(from.theta, from.r, 1), at(to.theta, to.r, 1)];
  const half = (to.theta - from.theta) / (2 * arcs);
  return Array.from({ length: 2 * arcs + 1 }, (_, i) => {
    const isCorner = i % 2 === 1;
    return at(from.theta + half * i, isCorner ? from.r / Math.cos(half) : from.r, isCorner ? Math.cos(half) : 1);
  });
}

/** Arcs of at most a quarter turn that a piece takes along the whole stretch. */
function arcsOf(zone: FlightZone, k: number): number {
  const widths = zone.rings.map(({ outline }) => {
    const piece = outline[k] as OutlinePiece;
    return piece.to.theta - piece.from.theta;
  });
  return Math.max(1, Math.ceil(Math.max(...widths) / (Math.PI / 2) - 1e-9));
}

function basisAcross(piece: OutlinePiece, arcs: number): SplineBasis {
  if (piece.kind === 'arc') return arcBasis(arcs);
  return piece.kind === 'line' ? straight : cubicFit(piece.x.length - 1);
}

/** The face that piece `k` of the outlines sweeps along a stretch of flight. */
function sweptFace(builder: Builder, zone: FlightZone, k: number, along: CubicFit): KernelShape {
  const { kernel, mirror } = builder;
  const arcs = arcsOf(zone, k);
  const across = zone.rings.map(({ outline }) => polesAcross(outline[k] as OutlinePiece, arcs));
  const [rows, columns] = [(across[0] as unknown[]).length, zone.rings.length];
  const poles = new kernel.NCollection_Array2_gp_Pnt(1, rows, 1, columns);
  const weights = new kernel.NCollection_Array2_double(1, rows, 1, columns);
  const place = new kernel.gp_Pnt(0, 0, 0);
  type Pole = { x: number; y: number; w: number };
  for (let i = 0; i < rows; i++) {
    const fitted = (value: (pole: Pole, ring: number) => number) =>
      along.poles(Float64Array.from(across, (ring, j) => value(ring[i] as Pole, j)));
    const [x, y, w] = [fitted(({ x, w }) => x * w), fitted(({ y, w }) => y * w), fitted(({ w }) => w)];
    const z = fitted(({ w }, j) => w * (zone.rings[j] as { z: number }).z);
    for (let j = 0; j < columns; j++) {
      const weight = w[j] as number;
      place.SetCoord((x[j] as number) / weight, (mirror * (y[j] as number)) / weight, (z[j] as number) / weight);
      poles.SetValue(i + 1, j + 1, place);
      weights.SetValue(i + 1, j + 1, weight);
    }
  }
  const piece = zone.rings[0]?.outline[k] as OutlinePiece;
  const basis = basisAcross(piece, arcs);
  const [u, v] = [knotRows(builder, basis), knotRows(builder, along)];
  const parts = [u.knots, v.knots, u.counts, v.counts, basis.degree, along.degree, false, false];
  const surface = new kernel.Geom_BSplineSurface(...(piece.kind === 'arc' ? [poles, weights] : [poles]), ...parts);
  const face = new kernel.BRepBuilderAPI_MakeFace(surface, 1e-7).Face();
  for (const each of [poles, weights, place, u.knots, u.counts, v.knots, v.counts]) each.delete();
  return face;
}

/** Faces of a stretch of flight along z, ends open. */
export function flightFaces(builder: Builder, zone: FlightZone): KernelShape[] {
  const along = cubicFit(zone.rings.length - 1);
  return (zone.rings[0]?.outline ?? []).map((_, k) => sweptFace(builder, zone, k, along));
}

const edgeOf = ({ kernel }: Builder, ...parts: unknown[]): KernelShape =>
  new kernel.BRepBuilderAPI_MakeEdge(...parts).Edge();

function arcEdge(builder: Builder, from: KernelPoint, by: KernelPoint, to: KernelPoint): KernelShape {
  return edgeOf(builder, new builder.kernel.GC_MakeArcOfCircle(from, by, to).Value());
}

/** An edge in the plane at `z` (mm). */
function flatEdge(builder: Builder, edge: FlatEdge, z: number): KernelShape {
  const { piece, from, to } = edge;
  const { kernel } = builder;
  const [a, b] = [polarPoint(builder, from, z), polarPoint(builder, to, z)];
  if (!piece || piece.kind === 'line') return edgeOf(builder, a, b);
  if (piece.kind === 'arc') {
    const middle = { theta: (from.theta + to.theta) / 2, r: from.r };
    return arcEdge(builder, a, polarPoint(builder, middle, z), b);
  }
  const basis = cubicFit(piece.x.length - 1);
  const poles = new kernel.NCollection_Array1_gp_Pnt(1, piece.x.length);
  piece.x.forEach((x, i) => {
    poles.SetValue(i + 1, point(builder, x, piece.y[i] as number, z));
  });
  const { knots, counts } = knotRows(builder, basis);
  const curve = new kernel.Geom_BSplineCurve(poles, knots, counts, basis.degree);
  return edgeOf(builder, curve, Math.min(edge.start, edge.end), Math.max(edge.start, edge.end));
}

function wireOf({ kernel }: Builder, edges: readonly KernelShape[]): KernelShape {
  const wire = new kernel.BRepBuilderAPI_MakeWire();
  for (const edge of edges) wire.Add(edge);
  return wire.Wire();
}

/** A flat face in the plane at `z` (mm). */
export function flatFace(builder: Builder, { outer, inner }: FlatRegion, z: number): KernelShape {
  const loop = (edges: readonly FlatEdge[]) =>
    wireOf(
      builder,
      edges.map((edge) => flatEdge(builder, edge, z)),
    );
  const face = new builder.kernel.BRepBuilderAPI_MakeFace(loop(outer), true);
  if (inner) face.Add(builder.kernel.TopoDS.Wire(loop(inner).Reversed()));
  return face.Face();
}

const axisOf = (builder: Builder): KernelObject => {
  const { kernel } = builder;
  return new kernel.gp_Ax1(new kernel.gp_Pnt(0, 0, 0), new kernel.gp_Dir(0, 0, 1));
};

/** The side of a turned piece in two halves, ends open. */
export function turnedFaces(builder: Builder, zone: TurnedZone): KernelShape[] {
  const { from, to, startRadius, endRadius, side } = zone;
  const axis = axisOf(builder);
  return [0, Math.PI].map((theta) => {
    const at = (r: number, z: number) => polarPoint(builder, { theta, r }, z);
    const [a, b] = [at(startRadius, from), at(endRadius, to)];
    const half = Math.asin(Math.min(1, (to - from) / startRadius)) / 2;
    const middle = at(startRadius * Math.cos(half), from + startRadius * Math.sin(half));
    const edge = side === 'ball' ? arcEdge(builder, a, middle, b) : edgeOf(builder, a, b);
    return new builder.kernel.BRepPrimAPI_MakeRevol(edge, axis, builder.mirror * Math.PI, false).Shape();
  });
}

/** A body of revolution about z from its closed half section, corners as r and z, mm. */
export function revolvedBody(builder: Builder, corners: readonly { r: number; z: number }[]): KernelShape {
  const { kernel } = builder;
  const at = ({ r, z }: { r: number; z: number }) => point(builder, r, 0, z);
  const edges = corners.map((corner, i) =>
    edgeOf(builder, at(corner), at(corners[(i + 1) % corners.length] as { r: number; z: number })),
  );
  const face = new kernel.BRepBuilderAPI_MakeFace(wireOf(builder, edges), true).Face();
  return new kernel.BRepPrimAPI_MakeRevol(face, axisOf(builder), 2 * Math.PI, false).Shape();
}

/** A body less a box between two corners, mm. */
export function lessBox(builder: Builder, body: KernelShape, low: readonly number[], high: readonly number[]) {
  const { kernel } = builder;
  const corner = ([x = 0, y = 0, z = 0]: readonly number[]) => point(builder, x, y, z);
  const box = new kernel.BRepPrimAPI_MakeBox(corner(low), corner(high)).Shape();
  return new kernel.BRepAlgoAPI_Cut(body, box, new kernel.Message_ProgressRange()).Shape();
}
