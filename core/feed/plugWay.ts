/** A plug's balance along the channel, from the feed opening to where melting begins. */

import type { Design, DesignMaterial } from '../design/types.ts';
import type { Stations } from '../geometry/types.ts';
import { advanceOfAngle, angleOfAdvance, balanceAngle, plugBalance, plugShapeAt, riseAlongAxis } from './plug.ts';

/** Strength taken where the material tells none, Pa: of the order of plastics (common practice). */
const usualStrength = 30e6;

/** Pressure over strength at which grains are crushed flat, three as for hardness (from memory, Tabor 1951). */
const crushing = 3;

/** Least barrel friction that is reckoned with; below it a plug only turns with the screw. */
const leastFriction = 1e-3;

/** A pair of friction coefficients. */
export interface FrictionPair {
  readonly onBarrel: number;
  readonly onScrew: number;
}

/** Nominal friction, and the ends of its range. */
export function frictionPairs({ frictionOnBarrel, frictionOnScrew }: DesignMaterial) {
  const pair = (onBarrel: number, onScrew: number): FrictionPair => ({
    onBarrel: Math.max(onBarrel, leastFriction),
    onScrew: Math.max(0, onScrew),
  });
  return {
    nominal: pair(frictionOnBarrel.value, frictionOnScrew.value),
    low: pair(frictionOnBarrel.low, frictionOnScrew.high),
    high: pair(frictionOnBarrel.high, frictionOnScrew.low),
  };
}

/**
 * Pressure at which granules shear at the wall rather than slide, Pa: strength/sqrt(3) over the friction (von Mises),
 * and at most three strengths, where they are crushed flat. Coulomb friction ends there (own derivation).
 */
export function plugPressureLimit(material: DesignMaterial, onBarrel: number): number {
  const strength = material.mechanical?.strength ?? usualStrength;
  return strength * Math.min(crushing, 1 / (Math.sqrt(3) * onBarrel));
}

/** Where granules run loose or packed: stations and z. */
export interface SolidsSpan {
  /** station after the start of the opening, and where melting begins */
  readonly first: number;
  readonly last: number;
  /** z of the opening's start and end, m */
  readonly start: number;
  readonly end: number;
}

/** From the opening to where melting begins. @param meltsFrom station; beyond the last one: all of the screw */
export function solidsSpan({ barrel }: Design, { z, count }: Stations, meltsFrom: number): SolidsSpan {
  const { start, length } = barrel.feedOpening;
  const last = Math.max(0, Math.min(count - 1, Math.floor(meltsFrom)));
  let first = 0;
  while (first < last && z[first] < start) first++;
  return { first, last, start, end: start + length };
}

/** A plug along the channel at one flow, one speed and one pair of coefficients; arrays over stations. */
export interface PlugWay {
  /** advance per lead that the flow asks of a full channel, and what friction gives without pressure rise */
  readonly asked: Float64Array;
  readonly free: Float64Array;
  /** angle of the plug at this flow, rad */
  readonly angle: Float64Array;
  /** relative pressure rise along z, integrated from the end of the opening */
  readonly logPressure: Float64Array;
}

/**
 * Evaluates the plug's balance at every station of the span.
 * @param massFlow kg/s; @param screwSpeed rev/s, > 0
 * The plug keeps its bulk density; where no flight runs it is pushed through against the friction on the barrel.
 */
export function plugWay(
  design: Design,
  stations: Stations,
  span: SolidsSpan,
  massFlow: number,
  screwSpeed: number,
  friction: FrictionPair,
): PlugWay {
  const { count, z, flighted, freeArea, lead, barrelRadius } = stations;
  const empty = () => new Float64Array(count);
  const way = { asked: empty(), free: empty(), angle: empty(), logPressure: empty() };
  let before = 0;
  for (let i = span.first; i <= span.last; i++) {
    let rise = (-friction.onBarrel * 2 * Math.PI * barrelRadius[i]) / freeArea[i];
    if (flighted[i]) {
      const balance = plugBalance(plugShapeAt(stations, i), friction.onBarrel, friction.onScrew);
      const freeAngle = balanceAngle(balance.k, balance.drag);
      way.free[i] = freeAngle > 0 ? advanceOfAngle(freeAngle, balance.tanBarrel) : 0;
      way.asked[i] = massFlow / (design.material.bulkDensity * freeArea[i] * lead[i] * screwSpeed);
      way.angle[i] = angleOfAdvance(way.asked[i], balance.tanBarrel);
      rise = riseAlongAxis(balance, way.angle[i]);
    }
    if (i > span.first) {
      const length = Math.max(0, z[i] - Math.max(z[i - 1], span.end));
      way.logPressure[i] = way.logPressure[i - 1] + (length * (rise + before)) / 2;
    }
    before = rise;
  }
  return way;
}
