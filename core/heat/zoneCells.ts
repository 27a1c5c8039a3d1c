/** What the outside of each cell touches: still air, insulation, a cooling jacket, a heater. */

import type { Design, Zone } from '../design/types.ts';
import { coolingCoefficient, heaterCoefficient, insulatedCoefficient } from './coefficients.ts';
import { boreAreaOf, type NozzleCells } from './nozzleCells.ts';
import { stillAirCoefficient } from './stillAir.ts';

/** Losses of each cell, W/K; coolant K. */
export interface Sides {
  readonly toAmbient: Float64Array;
  readonly toCoolant: Float64Array;
  readonly coolant: Float64Array;
}

/** A heater: a body of one temperature, clamped on its cells. */
export interface Heater {
  readonly name: string;
  readonly part: 'zone' | 'nozzle';
  /** K */
  readonly setTemperature: number;
  /** W */
  readonly maxPower: number;
  /** contact with each cell from `first` on, W/K, and their sum */
  readonly first: number;
  readonly contact: Float64Array;
  readonly whole: number;
}

/** Length of a zone in a cell of the barrel, m. */
const shared = (zone: { readonly start: number; readonly end: number }, cell: number, i: number): number =>
  Math.max(0, Math.min(zone.end, (i + 1) * cell) - Math.max(zone.start, i * cell));

/** Coefficient of a zone's outside to the ambient, W/(m² K). */
function outsideOf(zone: Zone, diameter: number, ambient: number): number {
  if (zone.kind === 'cooled') return 0;
  return zone.kind === 'insulated' ? insulatedCoefficient : stillAirCoefficient(diameter, zone.setTemperature, ambient);
}

/**
 * Losses; zones that end inside a cell count by their share of it.
 * Loss to air is taken at the set temperature of a heated zone, and half-way to the hottest one where no zone is: exact
 * where it is largest, and the balance stays linear.
 */
export function sidesOf({ barrel, process, nozzle: body }: Design, barrelCells: number, nozzle: NozzleCells): Sides {
  const count = barrelCells + nozzle.length.length;
  const cell = barrel.length / barrelCells;
  const around = Math.PI * barrel.outerDiameter;
  const { ambient } = process;
  const sets = barrel.zones.flatMap((zone) => (zone.kind === 'heated' ? [zone.setTemperature] : []));
  const bare = stillAirCoefficient(
    barrel.outerDiameter,
    (ambient + Math.max(ambient, body.setTemperature, ...sets)) / 2,
    ambient,
  );
  const atNozzle = stillAirCoefficient(body.outerDiameter, body.setTemperature, ambient);
  const toAmbient = Float64Array.from({ length: count }, (_, i) =>
    i < barrelCells ? bare * around * cell : atNozzle * nozzle.surface[i - barrelCells],
  );
  const toCoolant = new Float64Array(count);
  const coolant = new Float64Array(count).fill(ambient);
  for (const zone of barrel.zones) {
    const outside = outsideOf(zone, barrel.outerDiameter, ambient);
    for (let i = 0; i < barrelCells; i++) {
      const surface = around * shared(zone, cell, i);
      toAmbient[i] += (outside - bare) * surface;
      if (zone.kind !== 'cooled' || !(surface > 0)) continue;
      // two jackets in one cell: the mean of their coolants
      const own = coolingCoefficient * surface;
      coolant[i] = (coolant[i] * toCoolant[i] + zone.coolantTemperature * own) / (toCoolant[i] + own);
      toCoolant[i] += own;
    }
  }
  toAmbient[barrelCells - 1] +=
    atNozzle * Math.max(0, boreAreaOf(barrel.outerDiameter, Math.max(body.outerDiameter, barrel.boreDiameter)));
  return { toAmbient: toAmbient.map((value) => Math.max(0, value)), toCoolant, coolant };
}

/** Heaters of the heated zones with the flow, then the nozzle's. */
export function heatersOf({ barrel, nozzle: body }: Design, barrelCells: number, nozzle: NozzleCells): Heater[] {
  const cell = barrel.length / barrelCells;
  const heated = barrel.zones.filter((zone): zone is Zone & { kind: 'heated' } => zone.kind === 'heated');
  const zones = heated.map(({ name, setTemperature, maxPower, ...zone }): Heater => {
    const first = Math.min(barrelCells - 1, Math.max(0, Math.floor(zone.start / cell)));
    const last = Math.min(barrelCells - 1, Math.max(first, Math.ceil(zone.end / cell) - 1));
    const contact = Float64Array.from(
      { length: last - first + 1 },
      (_, i) => heaterCoefficient * Math.PI * barrel.outerDiameter * shared(zone, cell, first + i),
    );
    return { name, part: 'zone', setTemperature, maxPower, first, contact, whole: sum(contact) };
  });
  const contact = nozzle.outside.map((surface) => heaterCoefficient * surface);
  const { setTemperature, maxPower } = body;
  return [
    ...zones,
    { name: 'nozzle', part: 'nozzle', setTemperature, maxPower, first: barrelCells, contact, whole: sum(contact) },
  ];
}

const sum = (values: Float64Array): number => values.reduce((total, value) => total + value, 0);
