/** Lays out compared reference quantities for a terminal. */

/** One compared quantity, as the reference solvers in core give it. */
export interface CheckedRow {
  readonly quantity: string;
  readonly expected: number;
  readonly got: number;
  /** Relative or absolute, as the quantity's name says; same kind as the limit. */
  readonly error: number;
  readonly limit: number;
  readonly pass: boolean;
}

/** One entry of a reference file, solved. */
export interface SolvedEntry {
  readonly file: string;
  /** The file's `case`. */
  readonly kind: string;
  readonly index: number;
  readonly rows: readonly CheckedRow[];
}

/** The worst row of one quantity over all entries of a case. */
export interface WorstRow extends CheckedRow {
  readonly kind: string;
  /** Index of the entry it comes from. */
  readonly index: number;
  /** How many times the quantity was compared, and how many passed. */
  readonly count: number;
  readonly passed: number;
}

/** How bad a row is: its error in units of its limit; a value that is no number is worst. */
const badness = ({ error, limit }: CheckedRow) => (Number.isFinite(error) ? Math.abs(error) / limit : Infinity);

/** The quantity without the working point at which it was compared, which several rows of an entry share. */
const family = (quantity: string) => quantity.replace(/,? at [\d.]+ of closed$/, '');

/** Worst row per case and quantity, in order of first appearance. */
export function worstRows(solved: readonly SolvedEntry[]): readonly WorstRow[] {
  const worst = new Map<string, WorstRow>();
  for (const { kind, index, rows } of solved) {
    for (const row of rows) {
      const quantity = family(row.quantity);
      const key = `${kind} ${quantity}`;
      const known = worst.get(key);
      const counts = { count: (known?.count ?? 0) + 1, passed: (known?.passed ?? 0) + Number(row.pass) };
      const leads = known === undefined || badness(row) > badness(known);
      worst.set(key, leads ? { ...row, quantity, kind, index, ...counts } : { ...known, ...counts });
    }
  }
  return [...worst.values()];
}

/** Every row, then the worst per quantity, then the count. */
export function referenceTable(solved: readonly SolvedEntry[]): string {
  const head = ['entry', 'quantity', 'expected', 'got', 'error', 'limit', 'pass'];
  const body = solved.flatMap(({ kind, index, rows }) => rows.map((row) => [`${kind}[${index}]`, ...cells(row)]));
  const worst = worstRows(solved).map((row) => [
    `${row.kind}[${row.index}]`,
    ...cells(row),
    `${row.passed} of ${row.count}`,
  ]);
  const passed = solved.flatMap(({ rows }) => rows).filter((row) => row.pass).length;
  const worstHead = [...head, 'passed'];
  return [
    ...layOut([head, ...body]),
    '',
    'Worst of each quantity',
    ...layOut([worstHead, ...worst]),
    '',
    `${passed} of ${body.length} within their limits`,
  ].join('\n');
}

const cells = (row: CheckedRow) => [
  row.quantity,
  figure(row.expected),
  figure(row.got),
  figure(row.error, 2),
  figure(row.limit, 2),
  row.pass ? 'yes' : 'NO',
];

function figure(value: number, digits = 5): string {
  if (!Number.isFinite(value)) return '-';
  const size = Math.abs(value);
  return value === 0 || (size >= 1e-3 && size < 1e5)
    ? String(Number(value.toPrecision(digits)))
    : value.toExponential(digits - 1);
}

function layOut(lines: readonly (readonly string[])[]): readonly string[] {
  const widths: number[] = [];
  for (const line of lines) {
    line.forEach((cell, i) => {
      widths[i] = Math.max(widths[i] ?? 0, cell.length);
    });
  }
  const isFigure = (i: number) => i >= 2 && i <= 5;
  return lines.map((line) =>
    line
      .map((cell, i) => (isFigure(i) ? cell.padStart(widths[i] ?? 0) : cell.padEnd(widths[i] ?? 0)))
      .join('  ')
      .trimEnd(),
  );
}
