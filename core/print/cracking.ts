/** Stress of a print that has set and cools on while held. */

import type { CrackState } from './types.ts';

/** Mechanics of the set print. SI, K. */
export interface Mechanics {
  readonly young: number;
  readonly strength: number;
  readonly expansion: number;
  readonly poisson: number;
  readonly setTemperature: number;
}

/**
 * Stress of a sheet that is fully held while it cools.
 * @param fall K, >= 0 of cooling below setting
 * @returns Pa; E alpha dT/(1 - nu), Callister, Materials Science and Engineering, eq. 17.9 (form). An upper bound:
 * creep and bending let part of it go.
 */
export const coolingStress = ({ young, expansion, poisson }: Omit<Mechanics, 'strength'>, fall: number): number =>
  (young * expansion * Math.max(0, fall)) / (1 - poisson);

/** Fall of temperature that brings a stress, K: sigma (1 - nu)/(E alpha); Infinity without expansion. */
export const fallFor = ({ young, expansion, poisson }: Omit<Mechanics, 'strength'>, stress: number): number =>
  (stress * (1 - poisson)) / (young * expansion);

/** Share of the strength under which cracks are unlikely; own choice, for notches between lines. */
export const soundShare = 0.5;

/** Surroundings of the print. K. */
export interface Surroundings {
  readonly bed: number | null;
  readonly chamber: number | null;
  readonly ambient: number;
}

/**
 * Stress near the bed and away from it, and how warm both should be.
 * Where bed or chamber are not given, the ambient stands in.
 * @param mechanics null where unknown: then nothing can be told
 */
export function crackState(mechanics: Mechanics | null, surroundings: Surroundings): CrackState {
  const bed = surroundings.bed ?? surroundings.ambient;
  const chamber = surroundings.chamber ?? surroundings.ambient;
  const places = { bed, chamber, bedKnown: surroundings.bed !== null, chamberKnown: surroundings.chamber !== null };
  if (mechanics === null) {
    const unknown = { bedStress: null, chamberStress: null, strength: null, share: null, wantedTemperature: null };
    return { verdict: null, ...unknown, ...places };
  }
  const { setTemperature, strength } = mechanics;
  const stressAt = (temperature: number) => coolingStress(mechanics, setTemperature - temperature);
  const [bedStress, chamberStress] = [stressAt(bed), stressAt(chamber)];
  const share = Math.max(bedStress, chamberStress) / strength;
  const fall = fallFor(mechanics, soundShare * strength);
  return {
    verdict: share < soundShare ? 'low' : share < 1 ? 'risky' : 'exceeds',
    bedStress,
    chamberStress,
    strength,
    share,
    wantedTemperature: Number.isFinite(fall) ? Math.max(0, setTemperature - fall) : null,
    ...places,
  };
}
