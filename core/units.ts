/** Units: the only place that knows mm, rpm, °C, MPa or kg/h. */

export * from './units/convert.ts';
export * from './units/format.ts';
export * from './units/look.ts';
export * from './units/parse.ts';
export { allUnits, type Dimension, type Unit } from './units/table.ts';
