/** Wanted triangle size in a tip region: fine at walls, in narrow places and at corners, coarse in the middle. */

import type { SizeField } from '../../math/triRefine.ts';
import type { Outline, Wall } from './outline.ts';

/** How fine a mesh is. */
export interface Fineness {
  /** Wanted edge at a wall over the distance to the wall opposite (or to the axis) */
  readonly wall: number;
  /** Wanted edge at a corner over that distance */
  readonly corner: number;
  /** Growth of the edge per distance from the place that asked for it */
  readonly growth: number;
  /** Largest edge over the bore radius */
  readonly largest: number;
}

interface Sources {
  readonly z: number[];
  readonly r: number[];
  readonly size: number[];
}

interface Piece {
  readonly z0: number;
  readonly r0: number;
  readonly z1: number;
  readonly r1: number;
  readonly length: number;
  /** +1 if melt lies below the piece walked downstream (outer wall), -1 above (inner wall) */
  readonly side: 1 | -1;
}

function pieces(wall: Wall, side: 1 | -1): Piece[] {
  return wall.z.slice(1).map((z1, i) => {
    const [z0, r0, r1] = [wall.z[i], wall.r[i], wall.r[i + 1]];
    return { z0, r0, z1, r1, length: Math.hypot(z1 - z0, r1 - r0), side };
  });
}

/** Distance along a ray to the first wall piece or to the axis. */
function rayLength(all: readonly Piece[], own: Piece, z: number, r: number, dz: number, dr: number): number {
  let nearest = dr < 0 ? -r / dr : Number.POSITIVE_INFINITY;
  for (const piece of all) {
    if (piece === own) continue;
    const ez = piece.z1 - piece.z0;
    const er = piece.r1 - piece.r0;
    const det = ez * dr - er * dz;
    if (Math.abs(det) < 1e-14 * piece.length) continue;
    const s = ((z - piece.z0) * dr - (r - piece.r0) * dz) / det;
    const t = (er * (z - piece.z0) - ez * (r - piece.r0)) / det;
    if (s >= 0 && s <= 1 && t > 1e-9 * piece.length && t < nearest) nearest = t;
  }
  return nearest;
}

/** Distance from a wall point straight across the melt. */
function across(all: readonly Piece[], piece: Piece, share: number): number {
  const z = piece.z0 + share * (piece.z1 - piece.z0);
  const r = piece.r0 + share * (piece.r1 - piece.r0);
  const dz = ((piece.r1 - piece.r0) / piece.length) * piece.side;
  const dr = (-(piece.z1 - piece.z0) / piece.length) * piece.side;
  return rayLength(all, piece, z, r, dz, dr);
}

const MOST_SOURCES = 160; // per piece; the rest of a very long slit is meshed by growth between them
const COARSEST_SLIT = 0.45; // edge over width of an endless slit: two quadratic triangles across
const SLIT_ASPECT = 8; // slits longer than this many widths are meshed more coarsely, or they would swamp the rest

/** Least distance across along a piece. */
function narrowest(all: readonly Piece[], piece: Piece, limit: number): number {
  return [0.1, 0.3, 0.5, 0.7, 0.9].reduce((least, share) => Math.min(least, across(all, piece, share)), limit);
}

function addWallSources(all: readonly Piece[], fineness: Fineness, limit: number, out: Sources): void {
  for (const piece of all) {
    const gap = narrowest(all, piece, limit);
    const aspect = piece.length / gap;
    const wall = Math.max(
      fineness.wall,
      Math.min(COARSEST_SLIT, fineness.wall * Math.max(1, Math.sqrt(aspect / SLIT_ASPECT))),
    );
    const spacing = Math.min(0.08 * limit, 0.6 * gap);
    const count = Math.max(2, Math.min(MOST_SOURCES, Math.ceil(piece.length / spacing)));
    for (let i = 0; i < count; i++) {
      const share = (i + 0.5) / count;
      out.z.push(piece.z0 + share * (piece.z1 - piece.z0));
      out.r.push(piece.r0 + share * (piece.r1 - piece.r0));
      out.size.push(wall * Math.min(limit, across(all, piece, share)));
    }
  }
}

const SHARP = Math.PI / 12;

/** A corner counts when the wall turns by more than a sampled arc's step. */
function addCornerSources(
  own: readonly Piece[],
  all: readonly Piece[],
  fineness: Fineness,
  limit: number,
  out: Sources,
): void {
  for (let i = 0; i + 1 < own.length; i++) {
    const a = own[i];
    const b = own[i + 1];
    const cross = (a.z1 - a.z0) * (b.r1 - b.r0) - (a.r1 - a.r0) * (b.z1 - b.z0);
    if (Math.abs(Math.asin(Math.max(-1, Math.min(1, cross / (a.length * b.length))))) < SHARP) continue;
    const gap = Math.min(limit, across(all, a, 0.999), across(all, b, 0.001));
    out.z.push(a.z1);
    out.r.push(a.r1);
    out.size.push(fineness.corner * gap);
  }
}

/**
 * Size field of a region.
 * @param outline both walls
 * @param fineness shares described there
 * @returns wanted edge length, m
 */
export function sizeField(outline: Outline, fineness: Fineness): SizeField {
  const inner = pieces(outline.inner, -1);
  const outer = pieces(outline.outer, 1);
  const all = [...inner, ...outer];
  const bore = Math.max(...outline.outer.r);
  const sources: Sources = { z: [], r: [], size: [] };
  addWallSources(all, fineness, bore, sources);
  addCornerSources(inner, all, fineness, bore, sources);
  addCornerSources(outer, all, fineness, bore, sources);
  const zs = Float64Array.from(sources.z);
  const rs = Float64Array.from(sources.r);
  const sizes = Float64Array.from(sources.size);
  const largest = fineness.largest * bore;
  return (z, r) => {
    let size = largest;
    for (let i = 0; i < sizes.length; i++) {
      if (sizes[i] >= size) continue;
      const room = (size - sizes[i]) / fineness.growth;
      const dz = z - zs[i];
      const dr = r - rs[i];
      const d2 = dz * dz + dr * dr;
      if (d2 < room * room) size = sizes[i] + fineness.growth * Math.sqrt(d2);
    }
    return size;
  };
}
