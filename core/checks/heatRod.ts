/** A bare rod as cells of the heat solver, without screw core and stream, for textbook cases. */

import type { HeatCells } from '../heat/heatCells.ts';
import { heatStep } from '../heat/heatSystem.ts';
import { type Masses, rings } from '../heat/masses.ts';
import { coldMoment, marchWarm } from '../heat/warmMarch.ts';

/** A rod. m, W m/K along it, W/(m K) to the ambient. */
export interface Rod {
  readonly count: number;
  readonly length: number;
  readonly conduction: number;
  readonly exchange: number;
  /** K */
  readonly ambient: number;
  /** temperature of its beginning, K; the other end is insulated; absent where both are */
  readonly base?: number;
}

/** Cells of the rod; the unused core stands at ambient temperature. */
export function rodCells({ count, length, conduction, exchange, ambient, base }: Rod): HeatCells {
  const cell = length / count;
  const filled = (value: number) => new Float64Array(count).fill(value);
  const toCoolant = filled(0);
  if (base !== undefined) toCoolant[0] = (2 * conduction) / cell;
  const inner = (value: number) => Float64Array.from({ length: count }, (_, i) => (i + 1 < count ? value : 0));
  return {
    count,
    barrel: count,
    z: Float64Array.from({ length: count }, (_, i) => (i + 0.5) * cell),
    length: filled(cell),
    wallVolume: filled(cell * 2e-4),
    coreRadius: filled(1e-3),
    link: inner(conduction / cell),
    coreLink: inner(1),
    across: filled(0),
    flights: filled(0),
    flightShare: filled(0),
    driveEnd: 1,
    toAmbient: filled(exchange * cell),
    toCoolant,
    coolant: filled(base ?? ambient),
    ambient,
    heaters: [],
  };
}

/** Steady wall temperatures of cells without stream and heaters, K. */
function steadyWall(cells: HeatCells): Float64Array {
  const start = () => new Float64Array(cells.count).fill(cells.ambient);
  const enthalpy = new Float64Array(cells.count);
  return heatStep(cells, null, [], { wall: start(), core: start(), enthalpy, bodies: new Float64Array(0) }).wall;
}

/** Heat that enters a rod at its beginning, W. */
export function baseHeat(rod: Rod): number {
  const cells = rodCells(rod);
  return cells.toCoolant[0] * ((rod.base ?? rod.ambient) - steadyWall(cells)[0]);
}

/** Heat capacities of a rod: J/K per cell of wall, next to nothing elsewhere. */
export const rodMasses = (cells: HeatCells, perCell: number): Masses => ({
  wall: new Float64Array(cells.count).fill(perCell),
  core: new Float64Array(cells.count),
  content: new Float64Array(cells.barrel * rings).fill(1e-12),
  bodies: new Float64Array(0),
  material: { heatCapacitySolid: 1000, heatCapacityMelt: 1000, heatOfFusion: 0, melting: 1e4 },
});

/** A solid cylinder that is cooled from outside: radius m, W/(m² K), W/(m K), m²/s, s. */
interface CooledCylinder {
  readonly radius: number;
  readonly coefficient: number;
  readonly conductivity: number;
  readonly diffusivity: number;
  readonly time: number;
}

/** Share of the first difference to the stream that is left at 0.8 of the radius: radial shells marched as cells. */
export function leftInCylinder(
  { radius, coefficient, conductivity, diffusivity, time }: CooledCylinder,
  count: number,
  steps: number,
): number {
  const cell = radius / count;
  const cells = rodCells({ count, length: radius, conduction: 1, exchange: 0, ambient: 0 });
  const masses = rodMasses(cells, 0);
  for (let i = 0; i < count; i++) {
    const edge = 2 * Math.PI * (i + 1) * cell;
    masses.wall[i] = (conductivity / diffusivity) * Math.PI * cell ** 2 * (2 * i + 1);
    cells.link[i] = i + 1 < count ? (conductivity * edge) / cell : 0;
  }
  cells.toAmbient[count - 1] = (2 * Math.PI * radius) / (1 / coefficient + cell / 2 / conductivity);
  const step = time / steps;
  const pace = { first: step, least: step, tolerance: 1e-30 };
  const { moments } = marchWarm(cells, masses, coldMoment(cells, masses, 1), (all) => all.length > steps, pace);
  const { wall } = moments[moments.length - 1].state;
  const at = 0.8 * count - 0.5;
  return (wall[Math.floor(at)] + wall[Math.ceil(at)]) / 2;
}
