/** What holds along the whole axis, screw then nozzle, in shown units. */

import { fromSi, type Prediction, type Unit } from '../../core/index.ts';
import { pressureUnit } from './pressureUnit.ts';

type Values = (number | null)[];

/** One value per point; null where there is none. */
export interface AxialSeries {
  /** mm */
  readonly z: number[];
  readonly pressureUnit: Unit;
  /** of granules where there is no melt, of melt elsewhere */
  readonly pressure: Values;
  /** °C; granules where some are left */
  readonly melt: Values;
  readonly solid: Values;
  readonly wall: Values;
  readonly core: Values;
  /** %: of the channel that is filled, and of the mass in it that is molten */
  readonly filled: Values;
  readonly molten: Values;
  /** mm, of the melt on the granules; null where there is none */
  readonly film: Values;
}

const finite = (value: number): number | null => (Number.isFinite(value) ? value : null);

/** A share that rounding took past its ends is put back. */
const percent = (share: number): number | null => finite(fromSi(Math.min(1, Math.max(0, share)), '%'));

/** Values along the screw where `there` says so. */
const where = (values: Float64Array, there: (i: number) => boolean, show: (value: number) => number | null): Values =>
  Array.from(values, (value, i) => (there(i) ? show(value) : null));

/** A channel filled less than this holds nothing worth telling the temperature of. */
const leastFilled = 1e-3;

function screwSeries({ stations, axial }: Prediction, unit: Unit): AxialSeries {
  const celsius = (kelvin: number) => finite(fromSi(kelvin, '°C'));
  const always = () => true;
  const filled = (i: number) => (axial.filling[i] ?? 0) > leastFilled;
  const film = (i: number) => (axial.film[i] ?? 0) > 0 && filled(i);
  return {
    pressureUnit: unit,
    z: Array.from(stations.z, (z) => fromSi(z, 'mm')),
    pressure: where(axial.pressure, always, (p) => finite(fromSi(p, unit))),
    melt: where(axial.meltTemperature, (i) => (axial.fill[i] ?? 0) > leastFilled, celsius),
    solid: where(axial.solidTemperature, (i) => filled(i) && (axial.moltenShare[i] ?? 1) < 1, celsius),
    wall: where(axial.wallTemperature, always, celsius),
    core: where(axial.screwTemperature, always, celsius),
    filled: where(axial.filling, always, percent),
    molten: where(axial.moltenShare, filled, percent),
    film: where(axial.film, film, (thickness) => finite(fromSi(thickness, 'mm'))),
  };
}

/** Joins the stations of the screw and the pieces of the nozzle; `pieceEnds` are the ends of the pieces, m. */
export function axialSeries(prediction: Prediction, pieceEnds: readonly number[], barrelEnd: number): AxialSeries {
  const { axial, output, nozzle } = prediction;
  const unit = pressureUnit(Math.max(output.headPressure, ...axial.pressure.filter(Number.isFinite)));
  const series = screwSeries(prediction, unit);
  let pressure = output.headPressure;
  const push = (z: number, temperature: number | undefined) => {
    series.z.push(Math.max(fromSi(z, 'mm'), series.z.at(-1) ?? 0));
    series.pressure.push(finite(fromSi(pressure, unit)));
    series.melt.push(output.flows && temperature !== undefined ? finite(fromSi(temperature, '°C')) : null);
    for (const values of [series.solid, series.wall, series.core, series.filled, series.molten, series.film])
      values.push(null);
  };
  push(barrelEnd, nozzle[0]?.temperature);
  nozzle.forEach((drop, index) => {
    pressure -= drop.pressureDrop;
    push(pieceEnds[index] ?? barrelEnd, drop.temperature);
  });
  return series;
}
