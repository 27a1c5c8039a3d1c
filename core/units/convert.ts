/** Conversion between SI and shown numbers, and the units a maker sees by default. */

import { allUnits, type Dimension, type Unit, type UnitRow, unitTable } from './table.ts';

const rowOf = (unit: Unit): UnitRow => unitTable[unit];

/** What a unit measures. */
export const dimensionOf = (unit: Unit): Dimension => rowOf(unit).dimension;

/** Units of a dimension, the default one first. */
export const unitsOf = (dimension: Dimension): readonly Unit[] => allUnits.filter((u) => dimensionOf(u) === dimension);

/**
 * Shown number to SI.
 * @param shown value in `unit`
 * @param unit symbol from the table
 * @returns value in the dimension's SI unit (rev/s for rotation); any finite value
 */
export function toSi(shown: number, unit: Unit): number {
  const { numerator, denominator, offset } = rowOf(unit);
  return ((shown + offset) * numerator) / denominator;
}

/**
 * SI to shown number.
 * @param si value in the dimension's SI unit
 * @param unit symbol from the table
 * @returns value in `unit`
 */
export function fromSi(si: number, unit: Unit): number {
  const { numerator, denominator, offset } = rowOf(unit);
  return (si * denominator) / numerator - offset;
}

/** Which habit of units a maker works in. */
export type UnitSystem = 'metric' | 'inch';

const metric: Record<Dimension, Unit> = {
  length: 'mm',
  area: 'mm²',
  volume: 'cm³',
  angle: '°',
  temperature: '°C',
  temperatureDifference: 'ΔK',
  rotation: 'rpm',
  torque: 'N·m',
  pressure: 'MPa',
  force: 'N',
  power: 'W',
  time: 's',
  speed: 'mm/s',
  mass: 'g',
  massFlow: 'g/min',
  volumeFlow: 'mm³/s',
  density: 'kg/m³',
  viscosity: 'Pa·s',
  rate: '1/s',
  share: '%',
  molarEnergy: 'kJ/mol',
  specificEnergy: 'J/g',
  heatCapacity: 'J/(kg·K)',
  conductivity: 'W/(m·K)',
  expansion: 'µm/(m·K)',
  surfaceTension: 'mN/m',
  current: 'A',
  energy: 'W·h',
  heatTransfer: 'W/(m²·K)',
  volumetricHeat: 'MJ/(m³·K)',
  compressibility: '1/GPa',
};

/** Unit shown for each dimension, by habit. */
export const displayUnits: Readonly<Record<UnitSystem, Readonly<Record<Dimension, Unit>>>> = {
  metric,
  inch: {
    ...metric,
    length: 'in',
    area: 'in²',
    volume: 'in³',
    temperature: '°F',
    temperatureDifference: 'Δ°F',
    torque: 'lbf·in',
    pressure: 'psi',
    force: 'lbf',
    speed: 'in/s',
    mass: 'lb',
    massFlow: 'lb/h',
    density: 'lb/ft³',
  },
};
