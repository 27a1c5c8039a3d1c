/** Trials that could be run next: speeds of the drive, temperatures within the material's window. */

import type { Project, Trial } from '../project/schema.ts';

/** Shares of the highest screw speed. */
const speedShares = [0.1, 0.25, 0.45, 0.7] as const;
/** Shifts of all heaters together, K. */
const shifts = [-10, 0, 10] as const;

/** Two significant digits, so that a person can set it. */
const rounded = (value: number): number => Number(value.toPrecision(2));

/** Set temperatures of a revision from the feed on, nozzle last, °C. */
export function setTemperatures(revision: Project['revisions'][number]): number[] {
  const zones = revision.barrel.zones.flatMap((zone) => (zone.kind === 'heated' ? [zone] : []));
  zones.sort((p, q) => p.startMm - q.startMm);
  return [...zones.map(({ setTempC }) => setTempC), revision.nozzle.setTempC];
}

/**
 * Settings worth looking at for a revision, as trials that are not run yet.
 * @param date YYYY-MM-DD on which they are planned
 * @returns up to 12 trials with ids P1, P2 …; each heater moved together by -10, 0 or 10 K, no shift that would leave the
 * material's window further than the present settings do, nor exceed what is safe; speeds at 10 to 70 % of the drive's
 * highest. Empty where revision or material is missing.
 */
export function planCandidates(project: Project, revisionId: string, date: string): readonly Trial[] {
  const revision = project.revisions.find(({ id }) => id === revisionId);
  const material = project.materials.find(({ id }) => id === revision?.materialId);
  if (!revision || !material) return [];
  const set = setTemperatures(revision);
  const { windowLowC, windowHighC, maxSafeC } = material;
  const lowest = Math.min(windowLowC.value, ...set);
  const highest = Math.min(maxSafeC.value, Math.max(windowHighC.value, ...set));
  const fits = shifts
    .map((shift) => set.map((value) => value + shift))
    .filter((values) => values.every((value) => value >= lowest && value <= highest));
  const curve = revision.drive.motorCurve;
  const fastest = curve[curve.length - 1].speedRpm / revision.drive.gearRatio;
  const speeds = [...new Set(speedShares.map((share) => rounded(share * fastest)))].filter((speed) => speed >= 0.01);
  return fits
    .flatMap((setTempsC) => speeds.map((screwSpeedRpm) => ({ setTempsC, screwSpeedRpm })))
    .map((settings, i) => ({
      id: `P${i + 1}`,
      date,
      revisionId,
      materialId: material.id,
      seconds: 60,
      grams: 0,
      ...settings,
    }));
}
