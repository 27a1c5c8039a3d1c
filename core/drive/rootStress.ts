/** Shear at every place of the screw where its root changes. */

import type { Screw } from '../design/types.ts';
import { placeSections } from '../geometry/profile.ts';
import { shoulderFactor } from './notch.ts';
import { equivalentStress, torsionStress } from './strength.ts';
import type { RootPlace, RootStress } from './types.ts';

/** Steps smaller than this count as none, m. */
const leastStep = 1e-6;

const plainPlace = (kind: RootPlace['kind'], z: number, diameter: number): RootPlace => ({
  kind,
  z,
  diameter,
  thick: diameter,
  fillet: null,
  factor: 1,
});

function stepPlace(kind: RootPlace['kind'], z: number, from: number, to: number, fillet: number | null): RootPlace[] {
  if (Math.abs(from - to) < leastStep) return [];
  const [thin, thick] = from < to ? [from, to] : [to, from];
  return [{ kind, z, diameter: thin, thick, fillet, factor: shoulderFactor(thick, thin, fillet) }];
}

/**
 * Places that carry torque, from the shank on: the shank, its step, the thinner end of each section, steps between
 * sections. Steps between sections have no fillet in the design, so they count as sharp. The flight's foot, a helical
 * rib, and keyseats are not counted.
 */
export function rootPlaces(screw: Screw): RootPlace[] {
  const placed = placeSections(screw);
  const first = placed[0];
  const { shankDiameter, shankLength, shankFillet } = screw;
  const places: RootPlace[] = [];
  if (shankLength > 0) {
    places.push(plainPlace('shank', -shankLength, shankDiameter));
    if (first)
      places.push(...stepPlace('shankShoulder', 0, shankDiameter, first.section.rootDiameterStart, shankFillet));
  }
  placed.forEach(({ section, start, end }, i) => {
    const { rootDiameterStart: from, rootDiameterEnd: to } = section;
    places.push(to < from ? plainPlace('root', end, to) : plainPlace('root', start, from));
    const next = placed[i + 1];
    if (next) places.push(...stepPlace('shoulder', end, to, next.section.rootDiameterStart, null));
  });
  return places;
}

/** What loads the screw: torques in N m, thrust at the highest pressure in N, yield in Pa. */
export interface ScrewLoad {
  readonly torque: number;
  readonly fullTorque: number;
  readonly thrust: number;
  readonly yieldStress: number;
}

/**
 * Stress of every place under one load.
 * All the torque is taken to pass every place, as when a plug jams at the tip; bending, which breaks more screws than
 * torque, is unknown and not counted.
 */
export function rootStresses(screw: Screw, load: ScrewLoad): RootStress[] {
  return rootPlaces(screw).map((place) => {
    const full = place.factor * torsionStress(load.fullTorque, place.diameter);
    const compression = (4 * load.thrust) / (Math.PI * place.diameter ** 2);
    const equivalent = equivalentStress(full, compression);
    return {
      ...place,
      running: place.factor * torsionStress(load.torque, place.diameter),
      full,
      compression,
      margin: equivalent > 0 ? load.yieldStress / equivalent : null,
    };
  });
}

/** The place with the least margin; where nothing loads, the one with the greatest factor over diameter cubed. */
export const worstRoot = (roots: readonly RootStress[]): RootStress =>
  roots.reduce((worst, next) => (gravity(next) > gravity(worst) ? next : worst));

const gravity = ({ margin, factor, diameter }: RootStress): number =>
  margin === null ? factor / diameter ** 3 / 1e30 : 1 / margin;
