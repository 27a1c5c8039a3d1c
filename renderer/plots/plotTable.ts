/** What a plot shows as a table: tab-separated, names with units on top, the same numbers as plotted. Pure. */

/** The part of a plot's options that names its columns. */
export interface NamedOptions {
  readonly series: readonly { readonly label?: unknown; readonly scale?: string }[];
  readonly axes?: readonly { readonly label?: unknown; readonly scale?: string }[];
}

const textOf = (value: unknown): string => (typeof value === 'string' ? value : '');

/** What stands after the last comma of an axis' name: its unit. */
function unitOf(axis: { readonly label?: unknown } | undefined): string {
  const parts = textOf(axis?.label).split(', ');
  return parts.length > 1 ? (parts.at(-1) ?? '') : '';
}

/** Names of a plot's columns: the x axis' own, then each line's with the unit of the axis it belongs to. */
export function columnNames({ series, axes = [] }: NamedOptions): string[] {
  const [x, ...others] = axes;
  return series.map(({ label, scale = 'y' }, index) => {
    if (index === 0) return textOf(x?.label) || textOf(label) || 'x';
    const axis = others.find((one) => (one.scale ?? 'y') === scale) ?? others[0];
    const unit = unitOf(axis);
    const name = textOf(label) || textOf(axis?.label);
    return unit === '' || name.endsWith(`, ${unit}`) ? name : `${name}, ${unit}`;
  });
}

/** A number as a spreadsheet reads it back exactly; nothing for what is not drawn. */
const cell = (value: number | null | undefined): string =>
  value === null || value === undefined || !Number.isFinite(value) ? '' : String(value);

/** The table; a row per point. */
export function tableText(names: readonly string[], data: readonly ArrayLike<number | null | undefined>[]): string {
  const count = data[0]?.length ?? 0;
  const rows = Array.from({ length: count }, (_, i) => data.map((column) => cell(column[i])).join('\t'));
  return `${[names.map((name) => name.replaceAll(/[\t\n]/g, ' ')).join('\t'), ...rows].join('\n')}\n`;
}
