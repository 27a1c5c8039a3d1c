/** Steady temperatures of barrel wall and screw core along the axis, and the power each heated zone needs to hold them. */

import type { Barrel, Design, Zone } from '../design/types.ts';
import { rootRadiusAt, sectionAt } from '../geometry/profile.ts';
import { coolingCoefficient, heaterCoefficient, insulatedCoefficient, outsideCoefficient } from './coefficients.ts';
import { rodTemperature } from './rod.ts';

/** Cells along the barrel: heat breaks of a few mm still span several. */
const cellCount = 240;

/** Temperatures at cell centres along the bore. */
export interface WallTemperatures {
  /** m */
  readonly z: Float64Array;
  /** K */
  readonly barrel: Float64Array;
  readonly screw: Float64Array;
  /** per heated zone: name, power needed to hold it without throughput (W), whether its set temperature is held */
  readonly heaters: readonly { readonly name: string; readonly power: number; readonly held: boolean }[];
}

/**
 * Solves barrel, then screw core.
 * @param design geometry, zones and materials
 * Assumes: radially uniform wall, controllers that hold the set temperature as far as their watts reach, nozzle at its
 * own set temperature, drive end of the screw at ambient, standing content between screw and barrel (conduction only).
 */
export function wallTemperatures(design: Design): WallTemperatures {
  const { barrel, process } = design;
  const cell = barrel.length / cellCount;
  const z = Float64Array.from({ length: cellCount }, (_, i) => (i + 0.5) * cell);
  const zones = Array.from(z, (at) => barrel.zones.findIndex((zone) => at >= zone.start && at <= zone.end));
  let starved: ReadonlySet<number> = new Set();
  let barrelTemperature = solveBarrel(design, z, zones, starved);
  // a heater that lacks watts gives what it has; two more passes settle its neighbours
  for (let pass = 0; pass < 3; pass++) {
    const next = new Set([...starved, ...overdrawn(barrel, zones, barrelTemperature, process.ambient)]);
    if (next.size === starved.size) break;
    starved = next;
    barrelTemperature = solveBarrel(design, z, zones, starved);
  }
  const heaters = barrel.zones.flatMap((zone, k) => {
    if (zone.kind !== 'heated') return [];
    const held = !starved.has(k);
    const power = held ? zonePower(barrel, k, zone, zones, barrelTemperature, process.ambient) : zone.maxPower;
    return [{ name: zone.name, power: Math.max(0, power), held }];
  });
  return { z, barrel: barrelTemperature, screw: solveScrew(design, z, barrelTemperature), heaters };
}

function solveBarrel(
  design: Design,
  z: Float64Array,
  zones: readonly number[],
  starved: ReadonlySet<number>,
): Float64Array {
  const { barrel, process, nozzle } = design;
  const cell = barrel.length / cellCount;
  const around = Math.PI * barrel.outerDiameter;
  const conduction = z.map((at) => wallConduction(barrel, at));
  const exchange = new Float64Array(z.length);
  const surroundings = new Float64Array(z.length).fill(process.ambient);
  const source = new Float64Array(z.length);
  zones.forEach((k, i) => {
    const zone: Zone | undefined = barrel.zones[k];
    exchange[i] = outsideCoefficient.value * around;
    if (zone?.kind === 'insulated') exchange[i] = insulatedCoefficient * around;
    if (zone?.kind === 'cooled') {
      exchange[i] = coolingCoefficient * around;
      surroundings[i] = zone.coolantTemperature;
    }
    if (zone?.kind !== 'heated') return;
    if (starved.has(k)) source[i] = zone.maxPower / (zone.end - zone.start);
    else {
      exchange[i] = heaterCoefficient * around;
      surroundings[i] = zone.setTemperature;
    }
  });
  return rodTemperature({
    cell,
    conduction,
    exchange,
    surroundings,
    source,
    startTemperature: process.ambient,
    startConductance: 0,
    endTemperature: nozzle.setTemperature,
    endConductance: (2 * conduction[z.length - 1]) / cell,
  });
}

/** Conductivity times wall cross-section, W m/K; the heat break is a thin sleeve round the bore. */
function wallConduction(barrel: Barrel, z: number): number {
  const bore = barrel.boreDiameter / 2;
  const stop = barrel.heatBreak;
  if (stop && z >= stop.start && z <= stop.start + stop.length) {
    const outside = Math.min(bore + stop.wall, barrel.outerDiameter / 2);
    return stop.conductivity * Math.PI * (outside ** 2 - bore ** 2);
  }
  return barrel.conductivity * Math.PI * ((barrel.outerDiameter / 2) ** 2 - bore ** 2);
}

/** W into the wall plus what the heater's own outside loses. */
function zonePower(
  barrel: Barrel,
  index: number,
  zone: Zone & { kind: 'heated' },
  zones: readonly number[],
  temperature: Float64Array,
  ambient: number,
): number {
  const cell = barrel.length / cellCount;
  const around = Math.PI * barrel.outerDiameter;
  let power = 0;
  zones.forEach((k, i) => {
    if (k !== index) return;
    power += heaterCoefficient * around * (zone.setTemperature - temperature[i]) * cell;
    power += outsideCoefficient.value * around * (zone.setTemperature - ambient) * cell;
  });
  return power;
}

function overdrawn(barrel: Barrel, zones: readonly number[], temperature: Float64Array, ambient: number): number[] {
  return barrel.zones.flatMap((zone, k) => {
    if (zone.kind !== 'heated') return [];
    return zonePower(barrel, k, zone, zones, temperature, ambient) > zone.maxPower ? [k] : [];
  });
}

/** Screw core: conducts along its root, exchanges with the barrel through the content, and stands on a cool drive end. */
function solveScrew(design: Design, z: Float64Array, barrel: Float64Array): Float64Array {
  const { screw, process, material } = design;
  const bore = design.barrel.boreDiameter / 2;
  const cell = design.barrel.length / cellCount;
  const root = z.map((at) => {
    const placed = sectionAt(screw, at);
    return placed ? rootRadiusAt(placed.section, at - placed.start) : 0.2 * bore;
  });
  const shankArea = (Math.PI * screw.shankDiameter ** 2) / 4;
  return rodTemperature({
    cell,
    conduction: root.map((r) => screw.steel.conductivity * Math.PI * r * r),
    exchange: root.map((r) => (2 * Math.PI * material.conductivity) / Math.log(bore / Math.min(r, 0.98 * bore))),
    surroundings: barrel,
    source: new Float64Array(z.length),
    startTemperature: process.ambient,
    startConductance: (screw.steel.conductivity * shankArea) / Math.max(screw.shankLength, 0.005),
    endTemperature: process.ambient,
    endConductance: 0,
  });
}
