/** One figure: name, value, and what it rests on when asked. */

import { type ReactNode, useState } from 'react';
import { figureInputs, lookRow, type PresentedGroup, type PresentedRow } from '../../core/index.ts';
import { placeOf } from '../handbook/places.ts';
import { useLook } from '../look.ts';
import { AskButton, DoubtSign, Explanation } from './Explanation.tsx';

/** Rows without a basis of their own rest on that of the nearest row before them. */
export function withBases(rows: readonly PresentedRow[]): PresentedRow[] {
  let last = rows.find((row) => row.basis)?.basis ?? null;
  return rows.map((row) => {
    last = row.basis ?? last;
    return { ...row, basis: last };
  });
}

/** A row of a group; `tools` stand between value and question mark. */
export function FigureRow(props: {
  readonly group: PresentedGroup['id'];
  readonly row: PresentedRow;
  /** the sign of doubt is left out where many rows share one doubt */
  readonly quiet?: boolean;
  readonly tools?: ReactNode;
  /** length of a bar below the figure, 0 to 1 */
  readonly bar?: number;
}) {
  const { group, quiet, tools, bar } = props;
  const row = lookRow(props.row, useLook());
  const [open, setOpen] = useState(false);
  return (
    <div className="figure" data-row={row.id}>
      <dt title={row.help}>{row.label}</dt>
      <dd>
        {!quiet && <DoubtSign doubt={row.basis?.doubt} />}
        {row.text}
        {tools}
      </dd>
      <dd className="figure-ask">
        <AskButton label={row.label} open={open} onPress={() => setOpen(!open)} />
      </dd>
      {bar !== undefined && (
        <dd className="bar" aria-hidden="true">
          <span className="bar-fill" style={{ width: `${100 * Math.min(1, Math.max(0, bar))}%` }} />
        </dd>
      )}
      {open && (
        <dd className="figure-basis">
          <Explanation
            help={row.help}
            basis={row.basis}
            inputs={figureInputs(group, row.id)}
            place={placeOf(group, row.id)}
          />
        </dd>
      )}
    </div>
  );
}
