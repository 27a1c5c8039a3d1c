/** Arches over outlets: of coarse grains that lock, and of cohesive ones that stick. */

import type { Design, DesignMaterial } from '../design/types.ts';
import { gravity } from '../math/constants.ts';

/** Clear size of an outlet, m; a round one has both alike. */
export interface OutletSize {
  readonly width: number;
  readonly length: number;
}

/** What else decides whether coarse grains arch. */
export interface ArchKind {
  /** longest over shortest dimension of a grain */
  readonly aspectRatio: number;
  readonly agitation: Design['hopper']['agitation'];
}

/**
 * Risk that coarse grains arch. There is no size that excludes it: in the plane, jams were found at every width
 * (Janda et al. 2008), in space the mean time between them grew beyond measure (Zuriguel et al. 2005).
 */
export interface CoarseArch {
  /** narrow side of the outlet over the largest grain dimension */
  readonly ratio: number;
  /** ratio below which grains jam sooner or later, in proportion to what is wanted; null for a long slot, which has none */
  readonly critical: number | null;
  /** ratio that practice asks for */
  readonly wanted: number;
  /** blocked: a large grain does not pass; low is never none */
  readonly risk: 'low' | 'some' | 'high' | 'blocked';
}

/** Largest dimension of nine in ten grains, m: d90, longer by the square root of the aspect ratio (own reading). */
export const largestGrain = ({ grain }: DesignMaterial): number => grain.d90 * Math.sqrt(grain.aspectRatio);

/** Ratios wanted of a round outlet and of a slot three times as long as wide; common practice (6 to 10, 3 to 5). */
const wantedRatio = { round: 6, slot: 3 } as const;

/** Ratio at which spheres stop jamming in a still round outlet, and long grains (from memory, Zuriguel et al. 2005). */
const criticalRatio = { sphere: 4.9, long: 6 } as const;

/** How far an outlet is a slot: 0 round or square, 1 from three widths of length on; between, in proportion. */
const slotShare = ({ width, length }: OutletSize): number => {
  const narrow = Math.min(width, length);
  return narrow > 0 ? Math.min(1, (Math.max(width, length) / narrow - 1) / 2) : 1;
};

/**
 * Arching of coarse grains over an outlet.
 * @param grain largest dimension, m, > 0
 * Stirring halves what is wanted (common practice). Shaken, grains flow on, in bursts, down to one grain (Janda et al.
 * 2009), and half is wanted too.
 */
export function archingRisk(outlet: OutletSize, grain: number, { aspectRatio, agitation }: ArchKind): CoarseArch {
  const slot = slotShare(outlet);
  const ratio = Math.min(outlet.width, outlet.length) / grain;
  const wanted = (wantedRatio.round + slot * (wantedRatio.slot - wantedRatio.round)) * (agitation === 'none' ? 1 : 0.5);
  const long = Math.min(1, Math.max(0, aspectRatio - 1));
  const sphere = criticalRatio.sphere + long * (criticalRatio.long - criticalRatio.sphere);
  const jams = agitation === 'vibration' ? 1 : (sphere * wanted) / wantedRatio.round;
  const critical = slot === 1 ? null : jams;
  const risk = ratio < 1 ? 'blocked' : ratio < jams ? 'high' : ratio < wanted ? 'some' : 'low';
  return { ratio, critical, wanted, risk };
}

/**
 * Factor H of an outlet: how much wider than the free arch it must be.
 * @param halfAngle of the wall from the vertical, rad, 0 to about 1
 * @param kind cone with a round outlet, or wedge with a slot at least three widths long
 * Source: Jenike, as 2 + theta/60 and 1 + theta/180 with theta in degrees (course tutorial).
 */
function outletFactor(halfAngle: number, kind: 'cone' | 'wedge'): number {
  const degrees = (halfAngle * 180) / Math.PI;
  return kind === 'cone' ? 2 + degrees / 60 : 1 + degrees / 180;
}

/**
 * Least outlet over which a cohesive granulate does not hold an arch: diameter of a cone's, width of a wedge's, m.
 * @param strength unconfined strength at the outlet, Pa; 0 = free-flowing
 * @param bulkDensity kg/m³; @param halfAngle, kind as for outletFactor
 * Source: Jenike, B = H sigma/(rho g). Known to ask for more than is needed.
 */
export const cohesiveOutlet = (
  strength: number,
  bulkDensity: number,
  halfAngle: number,
  kind: 'cone' | 'wedge',
): number => (outletFactor(halfAngle, kind) * strength) / (bulkDensity * gravity);

/** Cohesive arching of a design. */
export interface CohesiveArch {
  /** outlet that is needed, and feed opening's narrow side that is needed, m; 0 where free-flowing */
  readonly outlet: number;
  readonly opening: number;
  /** true where no strength is given, so that the granulate is taken to flow freely */
  readonly assumed: boolean;
}

/** Outlets that a design's cohesion asks for; the feed opening counts as a slot where it is three widths long. */
export function cohesiveArch({ hopper, barrel, material }: Design): CohesiveArch {
  const strength = material.unconfinedStrength ?? 0;
  const kind = slotShare(barrel.feedOpening) === 1 ? 'wedge' : 'cone';
  return {
    outlet: cohesiveOutlet(strength, material.bulkDensity, hopper.wallHalfAngle, 'cone'),
    opening: cohesiveOutlet(strength, material.bulkDensity, 0, kind),
    assumed: material.unconfinedStrength === null,
  };
}

/** Strength over the weight of a column ten large grains high: above about a half, cohesion is felt (own estimate). */
export const archingShare = (material: DesignMaterial): number =>
  (material.unconfinedStrength ?? 0) / (10 * largestGrain(material) * material.bulkDensity * gravity);
