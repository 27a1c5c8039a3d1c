/** Curves of a prediction in display units. */

import type { Prediction } from '../prediction/types.ts';
import { fromSi, type Unit, unitLabel } from '../units.ts';
import { residenceSeries } from './residenceSeries.ts';
import type { PresentedSeries } from './types.ts';

interface Axis {
  readonly label: string;
  readonly unit: Unit;
  readonly values: ArrayLike<number>;
}

const shown = (axis: Axis): Float64Array => Float64Array.from(axis.values, (value) => fromSi(value, axis.unit));

function series(id: string, title: string, name: string, x: Axis, y: Axis): PresentedSeries {
  return {
    id,
    title,
    name,
    xLabel: x.label,
    xUnit: unitLabel(x.unit),
    yLabel: y.label,
    yUnit: unitLabel(y.unit),
    x: shown(x),
    y: shown(y),
  };
}

/** All curves: along the screw, over speed, residence. */
export const seriesOf = (prediction: Prediction): PresentedSeries[] => [
  ...alongScrew(prediction),
  ...overSpeed(prediction),
  ...warming(prediction),
  ...residenceSeries(prediction.residence),
];

function alongScrew({ axial, stations }: Prediction): PresentedSeries[] {
  const z: Axis = { label: 'Along the screw', unit: 'mm', values: stations.z };
  const at = (id: string, title: string, name: string, label: string, unit: Unit, values: ArrayLike<number>) =>
    series(id, title, name, z, { label, unit, values });
  return [
    at('pressure', 'Pressure along the screw', 'melt', 'Pressure', 'MPa', axial.pressure),
    at('temperature', 'Temperatures along the screw', 'barrel wall', 'Temperature', '°C', axial.wallTemperature),
    at('temperature', 'Temperatures along the screw', 'screw core', 'Temperature', '°C', axial.screwTemperature),
    at('temperature', 'Temperatures along the screw', 'granules and melt', 'Temperature', '°C', axial.meltTemperature),
    at('temperature', 'Temperatures along the screw', 'granules', 'Temperature', '°C', axial.solidTemperature),
    at('fill', 'Filling along the screw', 'granules and melt', 'Filled', '%', axial.filling),
    at('fill', 'Filling along the screw', 'melt', 'Filled', '%', axial.fill),
    at('molten', 'Melting along the screw', 'molten share', 'Share', '%', axial.moltenShare),
    at('molten', 'Melting along the screw', 'solid bed over channel width', 'Share', '%', axial.bed),
    at('film', 'Melt film on the barrel', 'film', 'Thickness', 'mm', axial.film),
    at('shearRate', 'Shear rate in the channel', 'melt', 'Shear rate', '1/s', axial.shearRate),
    at('viscosity', 'Viscosity in the channel', 'melt', 'Viscosity', 'Pa·s', axial.viscosity),
    at('depth', 'Channel depth', 'depth', 'Depth', 'mm', stations.depth),
  ];
}

function warming({ warmUp }: Prediction): PresentedSeries[] {
  if (warmUp === null) return [];
  const { time, zones, content, throat } = warmUp.curves;
  const minutes: Axis = { label: 'Time from cold', unit: 'min', values: time };
  const at = (name: string, values: ArrayLike<number>) =>
    series('warmUp', 'Warming up from cold', name, minutes, { label: 'Temperature', unit: '°C', values });
  return [
    ...zones.map((values, i) => at(warmUp.heaters[i]?.name ?? '', values)),
    at('granulate inside', content),
    at('throat', throat),
  ];
}

function overSpeed({ curve }: Prediction): PresentedSeries[] {
  const speed: Axis = { label: 'Screw speed', unit: 'rpm', values: curve.screwSpeed };
  const flow = (name: string, values: ArrayLike<number>) =>
    series('output', 'Output over speed', name, speed, { label: 'Melt flow', unit: 'mm³/s', values });
  const torque = (name: string, values: ArrayLike<number>) =>
    series('torque', 'Torque over speed', name, speed, { label: 'Torque', unit: 'N·m', values });
  return [
    flow('output', curve.volumeFlow),
    flow('pumping', curve.pumping),
    flow('feed', curve.feed),
    flow('melting', curve.melting),
    flow('heaters', curve.heater),
    flow('torque', curve.torqueBound),
    series('headPressure', 'Head pressure over speed', 'head', speed, {
      label: 'Pressure',
      unit: 'MPa',
      values: curve.headPressure,
    }),
    torque('asked', curve.torque),
    torque('available', curve.torqueAvailable),
  ];
}
