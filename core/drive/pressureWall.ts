/** Stress of walls that hold the melt's pressure. */

import type { Barrel, Nozzle } from '../design/types.ts';
import type { WallStress } from './types.ts';

/**
 * Hoop stress at the bore of a long thick tube.
 * @param pressure Pa inside, none outside; @param inner, outer diameters, m, outer > inner
 * @returns Pa; p (D² + d²)/(D² - d²), Lamé 1852
 */
export const thickHoop = (pressure: number, inner: number, outer: number): number =>
  (pressure * (outer ** 2 + inner ** 2)) / (outer ** 2 - inner ** 2);

/** Hoop stress of a thin tube, Pa: p r/t with the bore's radius; low by the pressure's half where the wall is thin. */
export const thinHoop = (pressure: number, inner: number, outer: number): number =>
  (pressure * inner) / (outer - inner);

/** Hoop less radial stress at the bore, Pa, to be held against yield: 2 p D²/(D² - d²), Lamé with Tresca. */
export const wallEquivalent = (pressure: number, inner: number, outer: number): number =>
  (2 * pressure * outer ** 2) / (outer ** 2 - inner ** 2);

const wallStress = (part: WallStress['part'], pressure: number, inner: number, outer: number): WallStress => ({
  part,
  inner,
  outer,
  hoop: thickHoop(pressure, inner, outer),
  equivalent: wallEquivalent(pressure, inner, outer),
  thinHoop: thinHoop(pressure, inner, outer),
});

/**
 * Stress of the thinnest wall of barrel, heat break and nozzle.
 * @param pressure Pa, taken along the whole bore: a blocked screw may press on all of it
 * @returns one entry per part that has a wall; threads, holes and the feed opening's edge are not seen
 */
export function wallStresses(barrel: Barrel, nozzle: Nozzle, pressure: number): WallStress[] {
  const widest = Math.max(...nozzle.segments.flatMap(({ startDiameter, endDiameter }) => [startDiameter, endDiameter]));
  const { boreDiameter, outerDiameter, heatBreak } = barrel;
  const walls: [WallStress['part'], number, number][] = [['barrel', boreDiameter, outerDiameter]];
  if (heatBreak) walls.push(['heat break', boreDiameter, boreDiameter + 2 * heatBreak.wall]);
  walls.push(['nozzle', widest, nozzle.outerDiameter]);
  return walls
    .filter(([, inner, outer]) => outer > inner && inner > 0)
    .map(([part, inner, outer]) => wallStress(part, pressure, inner, outer));
}
