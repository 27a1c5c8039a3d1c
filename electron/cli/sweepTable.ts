/** A sweep as a table: units in the heads, what cannot be made kept as a row with its reason. */

import {
  capacityNames,
  type Evaluated,
  fromSi,
  type SearchInput,
  type SweepPlan,
  searchFigures,
} from '../../core/index.ts';

const withUnit = (label: string, unit: string): string => (unit === '' ? label : `${label} [${unit}]`);

/** Text of a cell; quotes only where a reader of comma-separated text needs them. */
const cell = (value: string): string => (/[",\n\r]/.test(value) ? `"${value.replaceAll('"', '""')}"` : value);

/** A figure in its shown unit; six digits say more than the model knows. */
const shownFigure = (value: number | null | undefined, unit: (typeof searchFigures)[number]['unit']): number | null =>
  value === null || value === undefined ? null : Number((unit === '' ? value : fromSi(value, unit)).toPrecision(6));

/** Heads of the columns. */
const heads = (inputs: readonly SearchInput[]): readonly string[] => [
  ...inputs.map(({ id, unit }) => withUnit(id, unit)),
  ...searchFigures.map(({ label, unit }) => withUnit(label, unit)),
  'Limited by',
  'Fields',
  'Why there is nothing',
];

/**
 * Comma-separated text, one row a design.
 * @param inputs those that were varied, in the order of the plan's axes
 */
export function sweepCsv(inputs: readonly SearchInput[], designs: readonly Evaluated[]): string {
  const rows = designs.map((design) => [
    ...design.changes.map(({ value }) => String(value)),
    ...searchFigures.map(({ id, unit }) => String(shownFigure(design.figures[id], unit) ?? '')),
    design.limit === null ? '' : capacityNames[design.limit],
    design.fields === 'solved' ? 'solved' : 'estimate by formulas',
    design.hole ?? '',
  ]);
  return `${[heads(inputs), ...rows].map((row) => row.map(cell).join(',')).join('\n')}\n`;
}

/** The same for programs: every figure with its unit. */
export function sweepJson(
  plan: SweepPlan,
  inputs: readonly SearchInput[],
  revisionId: string,
  designs: readonly Evaluated[],
): unknown {
  return {
    revision: revisionId,
    inputs: inputs.map(({ id, label, unit, value }, i) => ({ id, label, unit, now: value, ...plan.axes[i] })),
    figures: searchFigures.map(({ id, label, unit }) => ({ id, label, unit })),
    designs: designs.map((design) => ({
      values: design.changes.map(({ value }) => value),
      figures: Object.fromEntries(searchFigures.map(({ id, unit }) => [id, shownFigure(design.figures[id], unit)])),
      findings: design.findings,
      limit: design.limit,
      fields: design.fields,
      hole: design.hole,
    })),
  };
}
