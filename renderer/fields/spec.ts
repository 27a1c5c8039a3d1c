/** What a field needs to know of the value it edits. */

import { allUnits, fromSi, lookUnit, type NumberLook, toSi, type Unit, unitLabel } from '../../core/index.ts';
import { currentLook } from '../look.ts';

/** Units that values are stored in; the last ones have no other spelling and are not converted. */
export type FieldUnit = Unit | 'ratio' | 'count' | 'ΔE00' | 'Pa·sⁿ' | 'K/Pa';

/** Place, name, unit and help of one number. */
export interface FieldSpec {
  /** place below the part's root, joined by dots */
  readonly key: string;
  readonly label: string;
  readonly unit: FieldUnit;
  readonly help: string;
  /** arrow-key step in the field's unit; that of its unit where left out */
  readonly step?: number;
  /** an empty field takes the value away */
  readonly optional?: boolean;
}

/** Whether core knows the unit and can convert it. */
export const isUnit = (unit: FieldUnit): unit is Unit => (allUnits as readonly string[]).includes(unit);

/** The unit that a field is shown and typed in. */
export const shownUnit = (unit: FieldUnit, look: NumberLook): FieldUnit => (isUnit(unit) ? lookUnit(unit, look) : unit);

/** The unit as written beside the field; counts and ratios carry none. */
export function unitText(unit: FieldUnit, look: NumberLook = currentLook()): string {
  if (unit === 'ratio' || unit === 'count') return '';
  const shown = shownUnit(unit, look);
  return isUnit(shown) ? unitLabel(shown) : shown;
}

/** Steps that make sense for numbers of a unit (own choice); a tenth for all others. */
const unitSteps: Partial<Readonly<Record<FieldUnit, number>>> = {
  '°': 1,
  '°C': 1,
  W: 1,
  rpm: 1,
  count: 1,
  ratio: 0.01,
  N: 10,
  'kg/m³': 10,
  'J/(kg·K)': 10,
  'J/kg': 1000,
  'J/g': 1,
  'kJ/mol': 1,
  s: 1,
  N·m: 0.01,
  'N/m': 0.001,
};

/** The nearest of 1, 2, 5, 10 … to a step, so that stepping stays on round numbers. */
function roundStep(step: number): number {
  const decade = 10 ** Math.floor(Math.log10(step));
  const lead = step / decade;
  const round = lead < 1.5 ? 1 : lead < 3.5 ? 2 : lead < 7.5 ? 5 : 10;
  return Number((round * decade).toPrecision(3));
}

/** The step of a field in the unit it is shown in. */
export function shownStep({ unit, step }: FieldSpec, look: NumberLook): number {
  const stored = step ?? unitSteps[unit] ?? 0.1;
  const shown = shownUnit(unit, look);
  if (shown === unit || !isUnit(unit) || !isUnit(shown)) return stored;
  return roundStep(fromSi(toSi(stored, unit), shown));
}
