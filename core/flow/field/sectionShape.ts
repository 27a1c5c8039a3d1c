/**
 * Dimensionless shape of half a channel. Lengths are divided by the depth; y runs from root (0) to barrel (1), x from
 * the centre line (0) to the flank (-halfWidth). Both halves mirror each other: a straight channel by reflection, a
 * helical one by a half turn about the radial line through its middle, each with reversal of the slow flow. So the
 * stream function and the along-channel speed are even in x, and half the section is solved.
 */

import { type ChannelSection, sectionDepth, sectionRootWidth } from './channelSection.ts';

/** Half a section, lengths in depths. */
export interface SectionShape {
  /** Straight-flank half-width at the root and its growth per unit height. */
  readonly rootHalfWidth: number;
  readonly flankSlope: number;
  /** Fillet radius; 0 for a sharp root corner. */
  readonly fillet: number;
  /** x of the fillet's centre. */
  readonly filletCentre: number;
  /** Height at which the fillet meets the flank. */
  readonly filletHeight: number;
  /** Radius of the root, in depths; 0 marks a straight channel. */
  readonly rootRadius: number;
  /** 2 pi / lead times depth; 0 for a straight channel. */
  readonly twist: number;
}

/** Shape of a valid section. */
export function sectionShape(section: ChannelSection): SectionShape {
  const depth = sectionDepth(section);
  const rootHalfWidth = sectionRootWidth(section) / (2 * depth);
  const angle = section.flankAngle;
  const fillet = section.rootFillet / depth;
  return {
    rootHalfWidth,
    flankSlope: Math.tan(angle),
    fillet,
    filletCentre: Math.min(0, -rootHalfWidth + (fillet * (1 - Math.sin(angle))) / Math.cos(angle)),
    filletHeight: fillet * (1 - Math.sin(angle)),
    rootRadius: section.kind === 'helical' ? section.rootRadius / depth : 0,
    twist: section.kind === 'helical' ? (2 * Math.PI * depth) / section.lead : 0,
  };
}

/** Half-width between straight flanks at a height. */
export function halfWidthAt(shape: SectionShape, y: number): number {
  return shape.rootHalfWidth + shape.flankSlope * y;
}

/** Mapped place of the wall at a height: 0 on the straight flank, more inside the fillet, up to 1 at the centre line. */
export function wallAt(shape: SectionShape, y: number): number {
  if (y >= shape.filletHeight) return 0;
  const below = shape.fillet - y;
  const x = shape.filletCentre - Math.sqrt(Math.max(0, shape.fillet * shape.fillet - below * below));
  return Math.max(0, 1 + x / halfWidthAt(shape, y));
}

/** Height at which the wall passes a mapped place; the wall falls from the flank to the root as s grows. */
export function heightOfWall(shape: SectionShape, s: number): number {
  let low = 0;
  let high = shape.filletHeight;
  if (wallAt(shape, 0) <= s) return 0;
  for (let pass = 0; pass < 60; pass++) {
    const middle = (low + high) / 2;
    if (wallAt(shape, middle) > s) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
