/** All figures in groups, each with what it rests on when asked. */

import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { Basis, PresentedGroup, PresentedRow } from '../../core/index.ts';
import { useEvaluation } from '../store/evaluation.ts';
import { text } from '../strings.ts';

const words = text.figures;

function BasisText({ basis }: { readonly basis: Basis }) {
  return (
    <div className="basis">
      <p>
        <strong>{basis.model}.</strong> {basis.assumptions.join(' ')}
      </p>
      <p>
        <strong>{words.from}:</strong> {basis.source}
      </p>
      <p>
        <strong>{words.range}:</strong> {basis.range}
      </p>
      {basis.doubt && (
        <p className="doubt">
          <span aria-hidden="true">▲</span> {words.doubt}: {basis.doubt}
        </p>
      )}
    </div>
  );
}

function Row({ row }: { readonly row: PresentedRow }) {
  const [open, setOpen] = useState(false);
  return (
    <div className="figure">
      <dt title={row.help}>{row.label}</dt>
      <dd>
        {row.basis?.doubt && (
          <span className="doubtful" title={`${words.doubt}: ${row.basis.doubt}`} role="img" aria-label={words.doubt}>
            ▲{' '}
          </span>
        )}
        {row.text}
      </dd>
      {row.basis ? (
        <Button
          className="tiny"
          aria-expanded={open}
          aria-label={`${words.rests}: ${row.label}`}
          onPress={() => setOpen(!open)}
        >
          <span title={words.rests}>?</span>
        </Button>
      ) : (
        <span />
      )}
      {open && row.basis && <BasisText basis={row.basis} />}
    </div>
  );
}

function Group({ group }: { readonly group: PresentedGroup }) {
  const rows = group.rows.filter((row) => row.text !== '');
  if (rows.length === 0) return null;
  return (
    <details className="figure-group" open>
      <summary>{group.title}</summary>
      <dl>
        {rows.map((row) => (
          <Row key={row.id} row={row} />
        ))}
      </dl>
    </details>
  );
}

/** The groups of the latest prediction. */
export function Figures() {
  const presentation = useEvaluation((state) => state.presentation);
  const stale = useEvaluation((state) => state.stale);
  if (!presentation) return null;
  return (
    <section className={stale ? 'figures stale' : 'figures'} aria-label={words.title}>
      <h2>{words.title}</h2>
      {presentation.groups.map((group) => (
        <Group key={group.id} group={group} />
      ))}
    </section>
  );
}
