/** What the columns of a pasted viscosity table stand for, from their headings. */

import type { Unit } from '../units.ts';

/** A column that a fit needs. */
export type RheologyField = 'shearRate' | 'temperature' | 'viscosity';

/** A column by its place, with its unit; `told` false where the unit was assumed. */
export interface RheologyColumn {
  readonly field: RheologyField;
  readonly index: number;
  readonly unit: Unit;
  readonly told: boolean;
}

const units: Readonly<Record<RheologyField, readonly (readonly [RegExp, Unit])[]>> = {
  viscosity: [
    [/m\s?Pa\W{0,2}s|\bcP\b/, 'mPa·s'],
    [/k\s?Pa\W{0,2}s/, 'kPa·s'],
    [/Pa\W{0,2}s/i, 'Pa·s'],
    [/\bpoise\b|\(P\)|\[P\]/i, 'P'],
  ],
  temperature: [
    [/[°º]\s?C\b|℃|\bdeg\s?C\b|celsius|\(C\)|\[C\]/i, '°C'],
    [/[°º]\s?F\b|℉|\bdeg\s?F\b|fahrenheit|\(F\)|\[F\]/i, '°F'],
    [/\bK\b|kelvin/, 'K'],
  ],
  shearRate: [
    [/1\s?\/\s?min|min\s?\^?-1|min⁻¹/i, '1/min'],
    [/1\s?\/\s?s(ec)?\b|\bs(ec)?\s?\^?[-−]1|s⁻¹|\(\/s\)|rad\/s/i, '1/s'],
  ],
};

const words: Readonly<Record<RheologyField, RegExp>> = {
  viscosity: /visc|viskos|\beta\b|η/i,
  temperature: /temp|\bT\b/i,
  shearRate: /shear|rate|scher|gamma|γ|frequency/i,
};

/** Units where a heading says none. */
export const assumedUnits = { viscosity: 'Pa·s', temperature: '°C', shearRate: '1/s' } as const;

/** Order of the columns where there is no heading. */
export const assumedOrder: readonly RheologyField[] = ['shearRate', 'temperature', 'viscosity'];

const unitIn = (heading: string, field: RheologyField): Unit | null =>
  units[field].find(([pattern]) => pattern.test(heading))?.[1] ?? null;

/** The first heading, not yet taken, that passes a test. */
const first = (headings: readonly string[], taken: ReadonlySet<number>, test: (heading: string) => boolean): number =>
  headings.findIndex((heading, index) => !taken.has(index) && test(heading));

/**
 * Columns by their headings: words go before units, so that "stress, Pa" is no viscosity.
 * @param headings one text per column
 * @returns the columns that were found; fields that no heading names are left out
 */
export function columnsOf(headings: readonly string[]): readonly RheologyColumn[] {
  const taken = new Set<number>();
  const found: RheologyColumn[] = [];
  const take = (field: RheologyField, index: number) => {
    if (index < 0 || found.some((column) => column.field === field)) return;
    taken.add(index);
    const unit = unitIn(headings[index] ?? '', field);
    found.push({ field, index, unit: unit ?? assumedUnits[field], told: unit !== null });
  };
  const fields = ['viscosity', 'temperature', 'shearRate'] as const;
  for (const field of fields)
    take(
      field,
      first(headings, taken, (heading) => words[field].test(heading)),
    );
  for (const field of fields)
    take(
      field,
      first(headings, taken, (heading) => unitIn(heading, field) !== null),
    );
  return found;
}
