/** The table of what differs in the description. */

import { useState } from 'react';
import type { Revision } from '../../core/index.ts';
import { useLook } from '../look.ts';
import { compareText } from '../strings/compare.ts';
import { type DescribedRow, describedRows } from './describedRows.ts';

const words = compareText.described;

function Table({
  revisions,
  rows,
  marked,
}: {
  readonly revisions: readonly Revision[];
  readonly rows: readonly DescribedRow[];
  /** whether what differs is told from the rest */
  readonly marked: boolean;
}) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a table wider than the window must be scrolled from the keyboard
    <section className="table-scroll" aria-label={words.scroll} tabIndex={0}>
      <table className="compare-table">
        <caption>{words.title}</caption>
        <thead>
          <tr>
            <th scope="col">{words.value}</th>
            {revisions.map(({ id, name }) => (
              <th key={id} scope="col" title={name}>
                {id}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.key} className={marked && row.differs ? 'differs' : ''}>
              <th scope="row">{row.label}</th>
              {row.values.map((value, index) => (
                <td key={revisions[index]?.id}>{value || '–'}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** The table; a change of units or of the decimal sign draws it anew. */
export function Described({ revisions }: { readonly revisions: readonly Revision[] }) {
  useLook();
  const [all, setAll] = useState(false);
  const rows = describedRows(revisions);
  const shown = all ? rows : rows.filter((row) => row.differs);
  return (
    <>
      <label className="check">
        <input type="checkbox" checked={!all} onChange={() => setAll(!all)} /> {words.onlyDifferent}
      </label>
      {shown.length === 0 ? (
        <p className="quiet">{words.same}</p>
      ) : (
        <Table revisions={revisions} rows={shown} marked={all} />
      )}
    </>
  );
}
