/** Reading of reference files and the form of their comparison. */

import type { ViscosityLaw } from '../material/viscosityLaw.ts';

/** One compared quantity. */
export interface RowOut {
  readonly quantity: string;
  readonly expected: number;
  readonly got: number;
  /** Relative or absolute as the limit is; relative errors are over the expected value unless the quantity says otherwise. */
  readonly error: number;
  readonly limit: number;
  readonly pass: boolean;
}

/** Plain object of a parsed file. */
export type Fields = Readonly<Record<string, unknown>>;

/** One entry: inputs and the rows with stored results. */
export interface CaseEntry {
  readonly label: string;
  readonly inputs: Fields;
  readonly rows: readonly Fields[];
}

/** Value as an object. */
export function fieldsOf(value: unknown, name: string): Fields {
  if (typeof value !== 'object' || value === null) throw new TypeError(`${name} is not an object`);
  return value as Fields;
}

/** A number by name. */
export function numberOf(fields: Fields, name: string): number {
  const value = fields[name];
  if (typeof value !== 'number') throw new TypeError(`${name} is not a number`);
  return value;
}

/** A number by name, or another where it is absent. */
export function numberOr(fields: Fields, name: string, otherwise: number): number {
  return typeof fields[name] === 'number' ? fields[name] : otherwise;
}

/** Case name and entries of a parsed file. */
export function readEntries(file: unknown): { name: string; entries: CaseEntry[] } {
  const top = fieldsOf(file, 'file');
  const list = Array.isArray(top.entries) ? top.entries : [];
  const entries = list.map((item: unknown, k: number) => {
    const entry = fieldsOf(item, `entry ${k}`);
    const rows = Array.isArray(entry.rows) ? entry.rows.map((row: unknown) => fieldsOf(row, 'row')) : [];
    const inputs = fieldsOf(entry.inputs, 'inputs');
    return { label: labelOf(inputs), inputs, rows };
  });
  return { name: typeof top.case === 'string' ? top.case : '', entries };
}

function labelOf(inputs: Fields): string {
  const material = fieldsOf(inputs.material, 'material');
  const parts = Object.entries(inputs).filter(([, value]) => typeof value === 'number');
  const law = `${String(material.model)}${typeof material.n === 'number' ? ` n=${material.n}` : ''}`;
  return [law, ...parts.map(([key, value]) => `${key}=${Number((value as number).toPrecision(5))}`)].join(' ');
}

/** Law of an entry's material. @param typicalRate 1/s, sets the regularisation of a power law that states none */
export function lawOf(inputs: Fields, typicalRate: number): ViscosityLaw {
  const material = fieldsOf(inputs.material, 'material');
  const of = (name: string) => numberOf(material, name);
  switch (material.model) {
    case 'newtonian':
      return { model: 'newtonian', viscosity: of('eta') };
    case 'power_law': {
      const regularisingRate = numberOr(material, 'reg_shear_rate', 1e-3 * typicalRate);
      return { model: 'powerLaw', consistency: of('m'), index: of('n'), regularisingRate };
    }
    case 'carreau_yasuda':
      return {
        model: 'carreauYasuda',
        zeroShearViscosity: of('eta0'),
        infiniteShearViscosity: numberOr(material, 'eta_inf', 0),
        timeConstant: of('lambda_s'),
        transition: of('a'),
        index: of('n'),
      };
    case 'cross':
      return { model: 'cross', zeroShearViscosity: of('eta0'), criticalStress: of('tau_star_Pa'), index: of('n') };
    default:
      throw new TypeError(`unknown material model ${String(material.model)}`);
  }
}

/** Compared row with a relative error; scale defaults to the expected value. */
export function relativeRow(quantity: string, expected: number, got: number, limit: number, scale = expected): RowOut {
  return makeRow(quantity, expected, got, Math.abs((got - expected) / scale), limit);
}

/** Compared row with an absolute error. */
export function absoluteRow(quantity: string, expected: number, got: number, limit: number): RowOut {
  return makeRow(quantity, expected, got, Math.abs(got - expected), limit);
}

function makeRow(quantity: string, expected: number, got: number, error: number, limit: number): RowOut {
  return { quantity, expected, got, error, limit, pass: error <= limit };
}

/** Closed-discharge gradient told by rows of gradient and its fraction of the closed one; the largest fraction is the sharpest. */
export function closedGradient(rows: readonly Fields[], gradientName: string): number | null {
  let best: Fields | null = null;
  for (const row of rows) {
    const fraction = numberOr(row, 'G_fraction_of_closed', 0);
    if (fraction > 0 && (!best || fraction > numberOf(best, 'G_fraction_of_closed'))) best = row;
  }
  return best ? numberOf(best, gradientName) / numberOf(best, 'G_fraction_of_closed') : null;
}
