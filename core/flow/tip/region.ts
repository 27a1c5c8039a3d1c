/** The melt space between screw tip and nozzle as a maker states it: a screw end inside an r-z profile. */

/** One corner of a profile. */
export interface ProfilePoint {
  /** Distance from the inlet plane along the axis, m */
  readonly z: number;
  /** Radius, m */
  readonly r: number;
  /** Radius of a fillet that rounds this corner, m; absent or 0 = sharp */
  readonly fillet?: number;
}

/** Shape of the screw's end. */
export type TipShape =
  | { readonly kind: 'flat' }
  /** Included angle, rad, in (0, pi) */
  | { readonly kind: 'cone'; readonly includedAngle: number }
  | { readonly kind: 'hemisphere' };

/** A plain cylinder on the end of the tip. */
export interface TipPin {
  /** m */
  readonly radius: number;
  /** Length beyond the shape that carries it, m */
  readonly length: number;
}

/** Everything the melt touches, from an inlet plane in the annulus round the screw to the orifice. */
export interface TipRegion {
  /** Root radius of the screw where the tip begins, m; 0 = no screw (a pipe) */
  readonly screwRadius: number;
  /** Length of plain annulus between inlet plane and the start of the tip, m */
  readonly annulusLength: number;
  readonly tip: TipShape;
  readonly pin?: TipPin;
  /** Barrel and nozzle from z = 0 to the orifice, z never falling; equal z makes a step or ledge. */
  readonly outer: readonly ProfilePoint[];
}

/** Parts of a plain contraction, as drawings give them. */
export interface ContractionParts {
  /** m */
  readonly barrelRadius: number;
  /** From inlet plane to where the barrel ends, m */
  readonly straightLength: number;
  /** Full angle of the conical entry, rad; pi = flat shoulder */
  readonly includedAngle: number;
  /** m */
  readonly orificeRadius: number;
  /** Length of the orifice's cylinder, m */
  readonly landLength: number;
}

/** Outer profile of a barrel, one cone (or flat shoulder) and a land. */
export function contractionProfile(parts: ContractionParts): ProfilePoint[] {
  const { barrelRadius, straightLength, includedAngle, orificeRadius, landLength } = parts;
  const flat = includedAngle >= Math.PI - 1e-9;
  const coneLength = flat ? 0 : (barrelRadius - orificeRadius) / Math.tan(includedAngle / 2);
  const start = straightLength + coneLength;
  return [
    { z: 0, r: barrelRadius },
    { z: straightLength, r: barrelRadius },
    { z: start, r: orificeRadius },
    { z: start + landLength, r: orificeRadius },
  ];
}

/**
 * Axial length of a tip from the end of the annulus to its foremost point, pin included.
 * @returns m
 */
export function tipLength(region: Pick<TipRegion, 'screwRadius' | 'tip' | 'pin'>): number {
  return shapeLength(region) + (region.pin?.length ?? 0);
}

/** Axial length of the tip's shape up to the pin's radius (or the axis), m. */
export function shapeLength(region: Pick<TipRegion, 'screwRadius' | 'tip' | 'pin'>): number {
  const { screwRadius, tip } = region;
  const end = region.pin?.radius ?? 0;
  switch (tip.kind) {
    case 'flat':
      return 0;
    case 'cone':
      return (screwRadius - end) / Math.tan(tip.includedAngle / 2);
    case 'hemisphere':
      return Math.sqrt(Math.max(0, screwRadius ** 2 - end ** 2));
  }
}
