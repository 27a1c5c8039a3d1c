/** Every unit a quantity may be shown or typed in: si = (shown + offset) * numerator / denominator. */

/** What a number measures; its SI unit is in brackets. */
export type Dimension =
  | 'length' // m
  | 'area' // m²
  | 'volume' // m³
  | 'angle' // rad
  | 'temperature' // K
  | 'temperatureDifference' // K
  | 'rotation' // rev/s
  | 'torque' // N m
  | 'pressure' // Pa
  | 'force' // N
  | 'power' // W
  | 'time' // s
  | 'speed' // m/s
  | 'mass' // kg
  | 'massFlow' // kg/s
  | 'volumeFlow' // m³/s
  | 'density' // kg/m³
  | 'viscosity' // Pa s
  | 'rate' // 1/s
  | 'share' // 1
  | 'molarEnergy' // J/mol
  | 'specificEnergy' // J/kg
  | 'heatCapacity' // J/(kg K)
  | 'conductivity' // W/(m K)
  | 'expansion' // 1/K
  | 'surfaceTension' // N/m
  | 'current' // A
  | 'energy' // J
  | 'heatTransfer' // W/(m² K)
  | 'volumetricHeat' // J/(m³ K)
  | 'compressibility'; // 1/Pa

/** One row of the table. */
export interface UnitRow {
  readonly dimension: Dimension;
  readonly numerator: number;
  readonly denominator: number;
  readonly offset: number;
  /** other spellings that are understood when typed */
  readonly spellings: readonly string[];
}

const row = (
  dimension: Dimension,
  numerator: number,
  denominator = 1,
  spellings: readonly string[] = [],
  offset = 0,
): UnitRow => ({ dimension, numerator, denominator, offset, spellings });

// Inch, pound and atmosphere are exact by definition (international yard and pound 1959, standard gravity 9.80665).
const inch = 0.0254;
const poundForce = 4.4482216152605;

/** All units by symbol. Within a dimension the first one is the default for bare numbers. */
export const unitTable = {
  mm: row('length', 1, 1000, ['millimetre', 'millimetres', 'millimeter', 'millimeters']),
  cm: row('length', 1, 100, ['centimetre', 'centimetres', 'centimeter', 'centimeters']),
  m: row('length', 1, 1, ['metre', 'metres', 'meter', 'meters']),
  µm: row('length', 1, 1e6, ['um', 'micron', 'microns', 'micrometre', 'micrometer']),
  in: row('length', inch, 1, ['"', '″', '”', "''", 'inch', 'inches']),
  thou: row('length', inch, 1000, ['mil', 'mils']),
  'mm²': row('area', 1, 1e6, ['sqmm']),
  'cm²': row('area', 1, 1e4, ['sqcm']),
  'm²': row('area', 1),
  'in²': row('area', inch * inch, 1, ['sqin']),
  'mm³': row('volume', 1, 1e9),
  'cm³': row('volume', 1, 1e6, ['ml', 'cc', 'ccm']),
  L: row('volume', 1, 1000, ['litre', 'litres', 'liter', 'liters']),
  'm³': row('volume', 1),
  'in³': row('volume', inch ** 3),
  '°': row('angle', Math.PI, 180, ['deg', 'degs', 'degree', 'degrees', 'º']),
  rad: row('angle', 1, 1, ['radian', 'radians']),
  '°C': row('temperature', 1, 1, ['C', 'degC', 'ºC', '℃', 'celsius', 'centigrade'], 273.15),
  '°F': row('temperature', 5, 9, ['F', 'degF', 'ºF', '℉', 'fahrenheit'], 459.67),
  K: row('temperature', 1, 1, ['kelvin']),
  ΔK: row('temperatureDifference', 1, 1, ['dK', 'K', 'Δ°C', 'dC', '°C', 'C', 'kelvin']),
  'Δ°F': row('temperatureDifference', 5, 9, ['dF', '°F', 'F']),
  rpm: row('rotation', 1, 60, ['rev/min', 'r/min', '1/min', 'u/min', 'min⁻¹', 'turns/min']),
  'rev/s': row('rotation', 1, 1, ['rps', 'r/s', '1/s', 'turns/s', 'Hz']),
  N·m: row('torque', 1, 1, ['Nm', 'newtonmetre', 'newtonmetres', 'newtonmeter', 'newtonmeters']),
  N·cm: row('torque', 1, 100, ['Ncm']),
  mN·m: row('torque', 1, 1000, ['mNm']),
  kgf·cm: row('torque', 9.80665, 100, ['kgfcm', 'kgcm', 'kg·cm']),
  lbf·in: row('torque', poundForce * inch, 1, ['lbfin', 'inlbf', 'inlb', 'in·lb', 'lb·in', 'lbin']),
  MPa: row('pressure', 1e6, 1, ['N/mm²', 'megapascal']),
  bar: row('pressure', 1e5, 1, ['bars']),
  psi: row('pressure', poundForce / (inch * inch), 1, ['lbf/in²', 'lb/in²']),
  kPa: row('pressure', 1000),
  Pa: row('pressure', 1, 1, ['pascal', 'pascals']),
  GPa: row('pressure', 1e9),
  atm: row('pressure', 101325),
  N: row('force', 1, 1, ['newton', 'newtons']),
  kN: row('force', 1000),
  lbf: row('force', poundForce),
  W: row('power', 1, 1, ['watt', 'watts']),
  kW: row('power', 1000),
  mW: row('power', 1, 1000),
  s: row('time', 1, 1, ['sec', 'secs', 'second', 'seconds']),
  min: row('time', 60, 1, ['mins', 'minute', 'minutes']),
  h: row('time', 3600, 1, ['hr', 'hrs', 'hour', 'hours']),
  ms: row('time', 1, 1000),
  'mm/s': row('speed', 1, 1000, ['mm/sec']),
  'mm/min': row('speed', 1, 60_000),
  'm/s': row('speed', 1),
  'm/min': row('speed', 1, 60),
  'in/s': row('speed', inch, 1, ['ips']),
  g: row('mass', 1, 1000, ['gram', 'grams', 'gramme', 'grammes']),
  kg: row('mass', 1, 1, ['kilo', 'kilogram', 'kilograms']),
  mg: row('mass', 1, 1e6),
  oz: row('mass', 0.028349523125, 1, ['ounce', 'ounces']),
  lb: row('mass', 0.45359237, 1, ['lbs', 'pound', 'pounds']),
  'g/min': row('massFlow', 1, 60_000),
  'kg/h': row('massFlow', 1, 3600, ['kg/hr']),
  'g/h': row('massFlow', 1, 3_600_000, ['g/hr']),
  'g/s': row('massFlow', 1, 1000),
  'kg/s': row('massFlow', 1),
  'lb/h': row('massFlow', 0.45359237, 3600, ['lb/hr', 'lbs/hr', 'lbs/h']),
  'mm³/s': row('volumeFlow', 1, 1e9, ['µL/s']),
  'cm³/h': row('volumeFlow', 1, 3.6e9, ['ml/h', 'cc/h', 'cm³/hr']),
  'cm³/min': row('volumeFlow', 1, 6e7, ['ml/min', 'cc/min']),
  'cm³/s': row('volumeFlow', 1, 1e6, ['ml/s', 'cc/s']),
  'L/h': row('volumeFlow', 1, 3.6e6),
  'm³/s': row('volumeFlow', 1),
  'kg/m³': row('density', 1, 1, ['g/L']),
  'g/cm³': row('density', 1000, 1, ['g/ml', 'g/cc']),
  'lb/ft³': row('density', 0.45359237, (12 * inch) ** 3),
  Pa·s: row('viscosity', 1, 1, ['Pas']),
  mPa·s: row('viscosity', 1, 1000, ['mPas', 'cP']),
  kPa·s: row('viscosity', 1000, 1, ['kPas']),
  P: row('viscosity', 1, 10, ['poise']),
  '1/s': row('rate', 1, 1, ['s⁻¹', 's^-1', '/s']),
  '1/min': row('rate', 1, 60, ['min⁻¹', '/min']),
  '%': row('share', 1, 100, ['percent', 'pct']),
  '‰': row('share', 1, 1000, ['permille']),
  ppm: row('share', 1, 1e6),
  'kJ/mol': row('molarEnergy', 1000),
  'J/mol': row('molarEnergy', 1),
  'kcal/mol': row('molarEnergy', 4184),
  'J/g': row('specificEnergy', 1000, 1, ['kJ/kg']),
  'J/kg': row('specificEnergy', 1),
  'J/(kg·K)': row('heatCapacity', 1, 1, ['J/kg/K', 'J/kgK', 'J/kg·K']),
  'kJ/(kg·K)': row('heatCapacity', 1000, 1, ['kJ/kg/K', 'kJ/kgK', 'kJ/kg·K', 'J/gK']),
  'W/(m·K)': row('conductivity', 1, 1, ['W/m/K', 'W/mK', 'W/m·K']),
  'µm/(m·K)': row('expansion', 1, 1e6, ['ppm/K', '1e-6/K', 'µm/m/K', 'µm/mK']),
  '1/K': row('expansion', 1),
  'mN/m': row('surfaceTension', 1, 1000),
  'N/m': row('surfaceTension', 1),
  A: row('current', 1, 1, ['amp', 'amps', 'ampere', 'amperes']),
  mA: row('current', 1, 1000),
  J: row('energy', 1, 1, ['joule', 'joules']),
  kJ: row('energy', 1000),
  W·h: row('energy', 3600, 1, ['Wh']),
  'W/(m²·K)': row('heatTransfer', 1, 1, ['W/m²/K', 'W/m²K', 'W/m2K', 'W/m²·K']),
  'MJ/(m³·K)': row('volumetricHeat', 1e6, 1, ['MJ/m³/K', 'MJ/m³K', 'MJ/m3K']),
  '1/GPa': row('compressibility', 1, 1e9, ['GPa⁻¹', '/GPa']),
} as const satisfies Record<string, UnitRow>;

/** Symbol of a unit in the table. */
export type Unit = keyof typeof unitTable;

/** Every unit symbol, in table order. */
export const allUnits = Object.keys(unitTable) as readonly Unit[];
