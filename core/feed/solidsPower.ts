/** Torque and heat of the granules' friction. */

import type { Design } from '../design/types.ts';
import type { Stations } from '../geometry/types.ts';
import { conveyorPower } from './conveyor.ts';
import type { FrictionPair, PlugWay, SolidsSpan } from './plugWay.ts';
import type { PackedState } from './solidsPacking.ts';

/** What the friction works on. */
interface Rubbing {
  readonly design: Design;
  readonly stations: Stations;
  readonly span: SolidsSpan;
  /** kg/s */
  readonly massFlow: number;
  /** rev/s, > 0 */
  readonly screwSpeed: number;
  readonly friction: FrictionPair;
}

/** Mean of a pressure that grows exponentially from one end to the other, Pa. */
function logMean(one: number, other: number): number {
  if (!(one > 0) || !(other > 0)) return (one + other) / 2;
  const log = Math.log(other / one);
  return Math.abs(log) < 1e-4 ? (one + other) / 2 : (other - one) / log;
}

/**
 * Torque per axial length of a plug on the screw, N: what the barrel's friction turns back on it.
 * Flighted: f P cos(angle) over the barrel between the flights, times its radius, whose power over a length is that of
 * Tadmor & Klein 1970 (from memory). Plain: the plug stands, the screw turns in it (own derivation).
 */
function torquePerLength({ stations, friction }: Rubbing, i: number, pressure: number, angle: number): number {
  const radius = stations.barrelRadius[i];
  if (!stations.flighted[i]) return friction.onScrew * pressure * 2 * Math.PI * stations.rootRadius[i] ** 2;
  const slope = stations.lead[i] / (2 * Math.PI * radius);
  const covered = (stations.starts[i] * stations.widthBarrel[i] * Math.sqrt(1 + slope * slope)) / slope;
  return friction.onBarrel * pressure * Math.cos(angle) * covered * radius;
}

/**
 * Torque and heat of the granules from the opening to where melting begins.
 * @returns N m; W/m per reach: the screw's power less what goes into pressure. Loose granules ask for a conveyor's power.
 */
export function solidsPower(
  rubbing: Rubbing,
  way: PlugWay,
  packed: PackedState,
): { readonly torque: number; readonly heat: Float64Array } {
  const { design, stations, span, massFlow, screwSpeed } = rubbing;
  const { z } = stations;
  const turning = 2 * Math.PI * screwSpeed;
  const volumeFlow = massFlow / design.material.bulkDensity;
  const heat = new Float64Array(Math.max(0, stations.count - 1));
  let torque = 0;
  for (let i = span.first; i < span.last; i++) {
    const length = z[i + 1] - z[i];
    if (!(length > 0)) continue;
    if (!packed.pressed[i] || !packed.pressed[i + 1]) {
      heat[i] = conveyorPower(massFlow, 1);
      torque += (heat[i] * length) / turning;
      continue;
    }
    const [from, to] = [packed.pressure[i], packed.pressure[i + 1]];
    const angle = (way.angle[i] + way.angle[i + 1]) / 2;
    const mean = logMean(from, to);
    const here = (torquePerLength(rubbing, i, mean, angle) + torquePerLength(rubbing, i + 1, mean, angle)) / 2;
    torque += here * length;
    heat[i] = Math.max(0, here * turning - (volumeFlow * (to - from)) / length);
  }
  return { torque, heat };
}
