/** Heaters of a machine in the order of set temperatures: zones with the flow, then the nozzle. */

import type { Design } from '../../design/types.ts';
import { fromSi } from '../../units.ts';

/** A heater and what it is set to. */
export interface Heater {
  readonly name: string;
  /** whole °C */
  readonly celsius: number;
}

/** All heaters with their set temperatures. */
export function heatersOf({ barrel, nozzle }: Design): readonly Heater[] {
  const zones = barrel.zones.flatMap((zone) =>
    zone.kind === 'heated' ? [{ name: zone.name, start: zone.start, temperature: zone.setTemperature }] : [],
  );
  return [
    ...zones.sort((p, q) => p.start - q.start).map(({ name, temperature }) => ({ name, celsius: whole(temperature) })),
    { name: 'nozzle', celsius: whole(nozzle.setTemperature) },
  ];
}

const whole = (kelvin: number): number => Math.round(fromSi(kelvin, '°C'));
