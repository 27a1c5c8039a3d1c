/** Barrel, nozzle and screw core cut into cells: what conducts, what loses heat, what is heated. */

import type { Design } from '../design/types.ts';
import { looseShare } from '../melting/conduction.ts';
import { airConductivity, jointCoefficient } from './coefficients.ts';
import { boreAreaOf, nozzleCells } from './nozzleCells.ts';
import { coreShape } from './screwCore.ts';
import { type Heater, heatersOf, type Sides, sidesOf } from './zoneCells.ts';

/** Cells along the barrel (a heat break of a few mm spans several) and along the nozzle. */
export interface CellCounts {
  readonly barrel: number;
  readonly nozzle: number;
}

/** Cells that the windows and commands use. */
export const defaultCells: CellCounts = { barrel: 240, nozzle: 24 };

/** Least clearance that counts, m: rough surfaces touch at points only. */
const leastClearance = 1e-5;

/** Every array has one entry per cell, barrel first, then nozzle, with the flow. */
export interface HeatCells extends Sides {
  readonly count: number;
  /** how many of them are barrel */
  readonly barrel: number;
  /** middle and length, m; the nozzle begins where the barrel ends */
  readonly z: Float64Array;
  readonly length: Float64Array;
  /** metal of the wall, m³ */
  readonly wallVolume: Float64Array;
  /** radius of the screw core, m; 0 in the nozzle */
  readonly coreRadius: Float64Array;
  /** through the wall to the next cell, W/K */
  readonly link: Float64Array;
  /** through the screw core to the next cell, W/K; 0 in the nozzle */
  readonly coreLink: Float64Array;
  /** between wall and screw core through standing content, W/K; 0 in the nozzle */
  readonly across: Float64Array;
  /** between wall and screw core through the flights and the clearance over them, W/K; 0 in the nozzle */
  readonly flights: Float64Array;
  /** share of the channel's annulus that the flights fill, 0 to 1 */
  readonly flightShare: Float64Array;
  /** screw core to its drive end, W/K */
  readonly driveEnd: number;
  readonly ambient: number;
  readonly heaters: readonly Heater[];
}

/**
 * Cuts a design into cells.
 * Assumes: radially uniform wall and core; nozzle of the barrel's metal, screwed in tight; screw tip ends in the barrel;
 * drive end of the screw at ambient; loose granules stand ahead of the first heated zone, solid or melt from it on.
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
    wallVolume: length.map((own, i) =>
      i < counts.barrel ? wallVolume(design, i * cell, own) : nozzle.volume[i - counts.barrel],
    ),
    link,
    ...core(design, z.subarray(0, counts.barrel), cell, length.length),
    ...sidesOf(design, counts.barrel, nozzle),
    ambient: process.ambient,
    heaters: heatersOf(design, counts.barrel, nozzle),
  };
}

/** Where the first heated zone begins, m; the barrel's end where there is none. */
export const heatedFrom = ({ barrel }: Design): number =>
  barrel.zones.reduce((first, zone) => (zone.kind === 'heated' ? Math.min(first, zone.start) : first), barrel.length);

/** Conductances of the screw core. */
function core(design: Design, z: Float64Array, cell: number, count: number) {
  const { screw, material, barrel } = design;
  const bore = barrel.boreDiameter / 2;
  const dense = heatedFrom(design);
  const shapes = Array.from(z, (at) => coreShape(design, at));
  const root = Float64Array.from(shapes, (shape) => shape.root);
  const coreLink = new Float64Array(count);
  const across = new Float64Array(count);
  const resistance = root.map((r) => cell / (screw.steel.conductivity * Math.PI * r * r));
  root.forEach((r, i) => {
    const conductivity = material.conductivity * (z[i] < dense ? looseShare(material) : 1);
    across[i] = (2 * Math.PI * conductivity * cell) / Math.log(bore / Math.min(r, 0.98 * bore));
    if (i + 1 < root.length) coreLink[i] = 2 / (resistance[i] + resistance[i + 1]);
  });
  const shank = (Math.PI * screw.shankDiameter ** 2) / 4;
  const toDrive = Math.max(screw.shankLength, 0.005) / (screw.steel.conductivity * shank);
  const all = (values: Float64Array) => Float64Array.from({ length: count }, (_, i) => (i < z.length ? values[i] : 0));
  const share = Float64Array.from(shapes, ({ flight }) => flight);
  const flights = all(share.map((own, i) => cell * flightConductance(design, root[i], own, z[i] >= dense)));
  return {
    coreRadius: all(root),
    flights,
    flightShare: all(share),
    coreLink,
    across,
    driveEnd: 1 / (toDrive + resistance[0] / 2),
  };
}

/** Conductance from core to wall per axial length through flights and the clearance over them, W/(m K). */
function flightConductance({ screw, material, barrel }: Design, root: number, share: number, dense: boolean): number {
  const crest = barrel.boreDiameter / 2 - screw.radialClearance;
  const height = crest - root;
  if (!(share > 0 && height > 0)) return 0;
  // grains do not fit the clearance: air ahead of the heated zones, melt from there on
  const filling = dense ? material.conductivity : airConductivity;
  const gap = (filling * 2 * Math.PI * crest * share) / Math.max(screw.radialClearance, leastClearance);
  const fin = (screw.steel.conductivity * Math.PI * (crest + root) * share) / height;
  return (gap * fin) / (gap + fin);
}

/** Length of heat break in a stretch of the barrel and section of its sleeve round the bore. m, m². */
function sleeveIn(
  { barrel }: Design,
  start: number,
  length: number,
): { readonly inside: number; readonly section: number } {
  const stop = barrel.heatBreak;
  if (!stop) return { inside: 0, section: 1 };
  const outer = Math.min(barrel.boreDiameter + 2 * stop.wall, barrel.outerDiameter);
  return {
    inside: Math.max(0, Math.min(start + length, stop.start + stop.length) - Math.max(start, stop.start)),
    section: boreAreaOf(outer, barrel.boreDiameter),
  };
}

/** Axial resistance of a length of barrel wall, K/W; the heat break is a thin sleeve round the bore. */
function wallResistance(design: Design, start: number, length: number): number {
  const { outerDiameter, boreDiameter, conductivity, heatBreak } = design.barrel;
  const { inside, section } = sleeveIn(design, start, length);
  const whole = (length - inside) / (conductivity * boreAreaOf(outerDiameter, boreDiameter));
  return heatBreak ? whole + inside / (heatBreak.conductivity * section) : whole;
}

/** Metal of a length of barrel wall, m³. */
function wallVolume(design: Design, start: number, length: number): number {
  const { inside, section } = sleeveIn(design, start, length);
  return (length - inside) * boreAreaOf(design.barrel.outerDiameter, design.barrel.boreDiameter) + inside * section;
}
