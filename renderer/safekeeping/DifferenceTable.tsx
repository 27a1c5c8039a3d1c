/** The table of what differs between a file and the work. */

import { useMemo } from 'react';
import { useLook } from '../look.ts';
import { safeText } from '../strings/safekeeping.ts';
import { type DifferenceRow, differenceRows } from './differenceRows.ts';

const words = safeText.difference;

/** Most rows that are drawn; the rest is counted. */
const mostRows = 200;

function Row({ row }: { readonly row: DifferenceRow }) {
  return (
    <tr>
      <th scope="row">
        {row.place && <span className="quiet">{row.place} </span>}
        {row.label}
      </th>
      <td>{row.before}</td>
      <td>{row.after}</td>
    </tr>
  );
}

/** The table; a sentence where nothing differs. Numbers follow the units of the window. */
export function DifferenceTable(props: {
  readonly before: unknown;
  readonly after: unknown;
  /** heads of the two columns */
  readonly heads: readonly [string, string];
  readonly same?: string;
}) {
  const { before, after, heads, same = words.same } = props;
  const look = useLook();
  // biome-ignore lint/correctness/useExhaustiveDependencies: numbers are written anew when they look otherwise
  const rows = useMemo(() => differenceRows(before, after), [before, after, look]);
  if (rows.length === 0) return <p className="quiet">{same}</p>;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a long table must be scrolled from the keyboard
    <section className="difference" aria-label={words.scroll} tabIndex={0}>
      <table className="compare-table">
        <caption className="visually-hidden">{words.caption(...heads)}</caption>
        <thead>
          <tr>
            <th scope="col">{words.value}</th>
            {heads.map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.slice(0, mostRows).map((row) => (
            <Row key={row.key} row={row} />
          ))}
        </tbody>
      </table>
      {rows.length > mostRows && <p className="quiet">{words.more(rows.length - mostRows)}</p>}
    </section>
  );
}
