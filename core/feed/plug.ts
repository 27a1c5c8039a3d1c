/** Conveying of granules as a plug that slides on barrel, root and flanks. */

/** A plug in a channel at one place. Lengths m, angles rad. */
export interface PlugShape {
  readonly barrelRadius: number;
  readonly depth: number;
  readonly lead: number;
  readonly starts: number;
  /** normal to the flight */
  readonly widthBarrel: number;
  readonly widthMean: number;
  readonly widthRoot: number;
}

/** What the plug does. */
export interface PlugConveying {
  readonly k: number;
  readonly m: number;
  /** angle between the plug's way and the plane across the axis, rad; 0 where friction conveys nothing */
  readonly angle: number;
  /** axial advance per turn over the lead, 0 to 1 */
  readonly efficiency: number;
}

/**
 * Conveying angle without pressure rise.
 * @param shape channel at the feed
 * @param onBarrel, onScrew Coulomb friction coefficients, onBarrel > 0
 * @param pressureTerm the term of pressure build-up, ln(P2/P1) times depth over channel length; 0 for free feeding
 * Source: Darnell & Mol 1956, in the arrangement of Tadmor & Klein 1970. Holds for a packed plug; loose granules in a
 * small screw slip more (they roll).
 */
export function plugConveying(shape: PlugShape, onBarrel: number, onScrew: number, pressureTerm = 0): PlugConveying {
  const { barrelRadius, depth } = shape;
  const helix = (radius: number) => Math.atan(shape.lead / (2 * Math.PI * radius));
  const mean = (barrelRadius - depth / 2) / barrelRadius;
  const root = (barrelRadius - depth) / barrelRadius;
  const atBarrel = helix(barrelRadius);
  const atMean = helix(barrelRadius - depth / 2);
  const atRoot = helix(barrelRadius - depth);
  const k = (mean * (Math.sin(atMean) + onScrew * Math.cos(atMean))) / (Math.cos(atMean) - onScrew * Math.sin(atMean));
  const flank = k + mean / Math.tan(atMean);
  const ratio = onScrew / onBarrel;
  const m =
    ((2 * depth) / shape.widthBarrel) * ratio * Math.sin(atBarrel) * flank +
    (shape.widthRoot / shape.widthBarrel) * ratio * Math.sin(atBarrel) * (k + root / Math.tan(atRoot)) +
    ((shape.widthMean / shape.widthBarrel) * pressureTerm * Math.sin(atMean) * flank) / onBarrel;
  const inside = 1 + k * k - m * m;
  const sine = inside > 0 ? (Math.sqrt(inside) - k * m) / (1 + k * k) : 0;
  if (!(sine > 0)) return { k, m, angle: 0, efficiency: 0 };
  const angle = Math.asin(Math.min(1, sine));
  const tangent = Math.tan(angle);
  return { k, m, angle, efficiency: tangent / (tangent + Math.tan(atBarrel)) };
}
