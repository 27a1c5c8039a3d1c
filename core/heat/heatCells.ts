/** Barrel, nozzle and screw core cut into cells: what conducts, what loses heat, what is heated. */

import type { Design } from '../design/types.ts';
import { rootRadiusAt, sectionAt } from '../geometry/profile.ts';
import { jointCoefficient } from './coefficients.ts';
import { boreAreaOf, nozzleCells } from './nozzleCells.ts';
import { type Heater, heatersOf, type Sides, sidesOf } from './zoneCells.ts';

/** Cells along the barrel (a heat break of a few mm spans several) and along the nozzle. */
export interface CellCounts {
  readonly barrel: number;
  readonly nozzle: number;
}

/** Cells that the windows and commands use. */
export const defaultCells: CellCounts = { barrel: 240, nozzle: 24 };

/** Every array has one entry per cell, barrel first, then nozzle, with the flow. */
export interface HeatCells extends Sides {
  readonly count: number;
  /** how many of them are barrel */
  readonly barrel: number;
  /** middle and length, m; the nozzle begins where the barrel ends */
  readonly z: Float64Array;
  readonly length: Float64Array;
  /** through the wall to the next cell, W/K */
  readonly link: Float64Array;
  /** through the screw core to the next cell, W/K; 0 in the nozzle */
  readonly coreLink: Float64Array;
  /** between wall and screw core through standing content, W/K; 0 in the nozzle */
  readonly across: Float64Array;
  /** screw core to its drive end, W/K */
  readonly driveEnd: number;
  readonly ambient: number;
  readonly heaters: readonly Heater[];
}

/**
 * Cuts a design into cells.
 * Assumes: radially uniform wall and core; nozzle of the barrel's metal, screwed in tight; screw tip ends in the barrel;
 * drive end of the screw at ambient.
 */
export function heatCells(design: Design, counts: CellCounts = defaultCells): HeatCells {
  const { barrel, process } = design;
  const nozzle = nozzleCells(design, counts.nozzle);
  const cell = barrel.length / counts.barrel;
  const length = Float64Array.from([...new Float64Array(counts.barrel).fill(cell), ...nozzle.length]);
  const z = Float64Array.from(length, (_, i) =>
    i < counts.barrel ? (i + 0.5) * cell : barrel.length + nozzle.middle[i - counts.barrel],
  );
  const resistance = Float64Array.from(length, (own, i) =>
    i < counts.barrel ? wallResistance(design, i * cell, own) : nozzle.resistance[i - counts.barrel],
  );
  const joint = 1 / (jointCoefficient * nozzle.joint);
  const link = resistance.map((own, i) =>
    i + 1 < length.length ? 1 / (own / 2 + resistance[i + 1] / 2 + (i + 1 === counts.barrel ? joint : 0)) : 0,
  );
  return {
    count: length.length,
    barrel: counts.barrel,
    z,
    length,
    link,
    ...core(design, z.subarray(0, counts.barrel), cell, length.length),
    ...sidesOf(design, counts.barrel, nozzle),
    ambient: process.ambient,
    heaters: heatersOf(design, counts.barrel, nozzle),
  };
}

/** Conductances of the screw core. */
function core(design: Design, z: Float64Array, cell: number, count: number) {
  const { screw, material, barrel } = design;
  const bore = barrel.boreDiameter / 2;
  const root = z.map((at) => {
    const placed = sectionAt(screw, at);
    return placed ? rootRadiusAt(placed.section, at - placed.start) : 0.2 * bore;
  });
  const coreLink = new Float64Array(count);
  const across = new Float64Array(count);
  const resistance = root.map((r) => cell / (screw.steel.conductivity * Math.PI * r * r));
  root.forEach((r, i) => {
    across[i] = (2 * Math.PI * material.conductivity * cell) / Math.log(bore / Math.min(r, 0.98 * bore));
    if (i + 1 < root.length) coreLink[i] = 2 / (resistance[i] + resistance[i + 1]);
  });
  const shank = (Math.PI * screw.shankDiameter ** 2) / 4;
  const toDrive = Math.max(screw.shankLength, 0.005) / (screw.steel.conductivity * shank);
  return { coreLink, across, driveEnd: 1 / (toDrive + resistance[0] / 2) };
}

/** Axial resistance of a length of barrel wall, K/W; the heat break is a thin sleeve round the bore. */
function wallResistance({ barrel }: Design, start: number, length: number): number {
  const bore = barrel.boreDiameter;
  const stop = barrel.heatBreak;
  const whole = 1 / (barrel.conductivity * boreAreaOf(barrel.outerDiameter, bore));
  if (!stop) return length * whole;
  const inside = Math.max(0, Math.min(start + length, stop.start + stop.length) - Math.max(start, stop.start));
  const sleeve = Math.min(bore + 2 * stop.wall, barrel.outerDiameter);
  return (length - inside) * whole + inside / (stop.conductivity * boreAreaOf(sleeve, bore));
}
