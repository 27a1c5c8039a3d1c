/** Marks of trials in drawings and tables: told apart by shape and words, not by colour alone. */

import type { BenchRow } from '../../core/index.ts';
import { benchText } from '../strings/bench.ts';

/** How a trial stands to its prediction. */
export type RowKind = 'fine' | 'outlier' | 'out' | 'untold';

/** The kind of a row. */
export const rowKind = ({ excluded, outlier, ratio }: BenchRow): RowKind =>
  excluded ? 'out' : outlier ? 'outlier' : ratio === null ? 'untold' : 'fine';

/** The mark around a point of a drawing. */
export function Mark({ kind, x, y }: { readonly kind: RowKind; readonly x: number; readonly y: number }) {
  const at = `translate(${x} ${y})`;
  switch (kind) {
    case 'fine':
      return <circle className="mark fine" transform={at} r="4" />;
    case 'outlier':
      return <path className="mark outlier" transform={at} d="M0 -6.5 L6.5 5 L-6.5 5 Z" />;
    case 'out':
      return <path className="mark out" transform={at} d="M-4.5 -4.5 L4.5 4.5 M4.5 -4.5 L-4.5 4.5" />;
    case 'untold':
      return <rect className="mark untold" transform={at} x="-3.5" y="-3.5" width="7" height="7" />;
  }
}

/** What the marks mean, those of them that occur. */
export function MarkLegend({ kinds }: { readonly kinds: readonly RowKind[] }) {
  return (
    <ul className="mark-legend">
      {(['fine', 'outlier', 'out', 'untold'] as const)
        .filter((kind) => kinds.includes(kind))
        .map((kind) => (
          <li key={kind}>
            <svg viewBox="-8 -8 16 16" width="16" height="16" aria-hidden="true">
              <Mark kind={kind} x={0} y={0} />
            </svg>{' '}
            {benchText.measured.kinds[kind]}
          </li>
        ))}
    </ul>
  );
}
