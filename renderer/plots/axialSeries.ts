/** Pressure and temperatures along the whole axis, screw then nozzle, in shown units. */

import { fromSi, type Prediction, type Unit } from '../../core/index.ts';
import { pressureUnit } from './pressureUnit.ts';

/** One value per point; null where there is none. */
export interface AxialSeries {
  /** mm */
  readonly z: number[];
  readonly pressureUnit: Unit;
  readonly pressure: (number | null)[];
  /** °C */
  readonly melt: (number | null)[];
  readonly wall: (number | null)[];
  readonly core: (number | null)[];
}

const finite = (value: number): number | null => (Number.isFinite(value) ? value : null);

/** Joins the stations of the screw and the pieces of the nozzle; `pieceEnds` are the ends of the pieces, m. */
export function axialSeries(prediction: Prediction, pieceEnds: readonly number[], barrelEnd: number): AxialSeries {
  const { stations, axial, output, nozzle } = prediction;
  const unit = pressureUnit(Math.max(output.headPressure, ...axial.pressure.filter(Number.isFinite)));
  const series: AxialSeries = {
    pressureUnit: unit,
    z: Array.from(stations.z, (z) => fromSi(z, 'mm')),
    pressure: Array.from(axial.pressure, (p) => finite(fromSi(p, unit))),
    melt: Array.from(axial.meltTemperature, (t, i) => (axial.fill[i] ? finite(fromSi(t, '°C')) : null)),
    wall: Array.from(axial.wallTemperature, (t) => finite(fromSi(t, '°C'))),
    core: Array.from(axial.screwTemperature, (t) => finite(fromSi(t, '°C'))),
  };
  let pressure = output.headPressure;
  const push = (z: number, temperature: number | undefined) => {
    series.z.push(Math.max(fromSi(z, 'mm'), series.z.at(-1) ?? 0));
    series.pressure.push(finite(fromSi(pressure, unit)));
    series.melt.push(temperature === undefined ? null : finite(fromSi(temperature, '°C')));
    series.wall.push(null);
    series.core.push(null);
  };
  push(barrelEnd, nozzle[0]?.temperature);
  nozzle.forEach((drop, index) => {
    pressure -= drop.pressureDrop;
    push(pieceEnds[index] ?? barrelEnd, drop.temperature);
  });
  return series;
}
