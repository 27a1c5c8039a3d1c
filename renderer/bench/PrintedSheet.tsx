/** The sheet to take to the bench: not on the screen, the only thing on paper. */

import { createPortal } from 'react-dom';
import { type PlannedTrial, type Project, trialSheet } from '../../core/index.ts';
import { benchText } from '../strings/bench.ts';

const words = benchText.sheet;

type Sheet = ReturnType<typeof trialSheet>;

function Head({ sheet }: { readonly sheet: Sheet }) {
  return (
    <>
      <h1>{sheet.title}</h1>
      <p>
        <b>{words.machine}:</b> {sheet.machine} <b>{words.granulate}:</b> {sheet.granulate}
      </p>
      <ul className="sheet-blanks">
        {sheet.blanks.map((blank) => (
          <li key={blank}>
            {blank}: <span className="blank" />
          </li>
        ))}
      </ul>
      <ul className="sheet-notes">
        {sheet.notes.map((note) => (
          <li key={note}>{note}</li>
        ))}
      </ul>
    </>
  );
}

function Rows({ sheet }: { readonly sheet: Sheet }) {
  return sheet.rows.map((row) => (
    <section key={row.label} className="sheet-trial">
      <h2>{row.label}</h2>
      <div>
        <p>
          <b>
            {words.set}: {words.speed} {row.screwSpeed};{' '}
            {row.heaters.map(({ name, temperature }) => `${name} ${temperature}`).join(', ')}
          </b>
        </p>
        <p>
          {words.settle}: {row.settle}. {words.collect}: {row.collect}. {words.expect}: {row.expected}. {row.why}
        </p>
        <ul className="sheet-cells">
          {row.blanks.map((blank) => (
            <li key={blank} className={blank === 'seen' ? 'long' : ''}>
              {blank}
            </li>
          ))}
        </ul>
      </div>
    </section>
  ));
}

/** Beside the window's root, so that print styles can show it alone. */
export function PrintedSheet(props: {
  readonly project: Project;
  readonly revisionId: string;
  readonly plans: readonly PlannedTrial[];
}) {
  const sheet = trialSheet(props.project, props.revisionId, props.plans);
  return createPortal(
    <article className="printed-sheet" aria-hidden="true">
      <Head sheet={sheet} />
      <Rows sheet={sheet} />
      <h2>{words.cautions}</h2>
      <ul className="sheet-notes">
        {sheet.cautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </article>,
    document.body,
  );
}
