/** Revisions side by side: what is predicted of them, and what differs in their description. */

import { useState } from 'react';
import { type ComparedValue, comparePredictions, formatNumber, type Project, type Revision } from '../../core/index.ts';
import { type Outcome, useOutcomes } from '../solve/compareRuns.ts';
import { useProject } from '../store/project.ts';
import { useView } from '../store/view.ts';
import { text } from '../strings.ts';
import { DialogFrame } from './DialogFrame.tsx';
import { describedRows } from './describedRows.ts';

const words = text.compare;

function Choice(props: { readonly project: Project; readonly chosen: readonly string[]; choose(ids: string[]): void }) {
  const { project, chosen, choose } = props;
  const toggle = (id: string) =>
    choose(
      project.revisions
        .map((revision) => revision.id)
        .filter((other) => (other === id ? !chosen.includes(id) : chosen.includes(other))),
    );
  return (
    <fieldset className="compare-choice">
      <legend>{words.choose}</legend>
      {project.revisions.map(({ id, name }) => (
        <label key={id}>
          <input type="checkbox" checked={chosen.includes(id)} onChange={() => toggle(id)} /> <b>{id}</b> {name}
        </label>
      ))}
    </fieldset>
  );
}

function Head({ revisions }: { readonly revisions: readonly Revision[] }) {
  return (
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
  );
}

const signs: Readonly<Record<ComparedValue['verdict'], string>> = {
  better: '▲',
  worse: '▼',
  different: '≠',
  'smaller than the model error': '≈',
  same: '=',
  unknown: '',
};

function Value({ value, first }: { readonly value: ComparedValue; readonly first: boolean }) {
  if (first) return <td>{value.text}</td>;
  const change =
    value.change === null ? '' : ` ${value.change > 0 ? '+' : ''}${formatNumber(100 * value.change, 2)}\u00a0%`;
  return (
    <td className={`verdict-${value.verdict.split(' ')[0]}`}>
      {value.text} <span className="change">{`${signs[value.verdict]} ${words.verdicts[value.verdict]}${change}`}</span>
    </td>
  );
}

const predictionsOf = (revisions: readonly Revision[], outcomes: Readonly<Record<string, Outcome>>) =>
  revisions.flatMap(({ id }) => {
    const outcome = outcomes[id];
    return outcome && 'prediction' in outcome ? [outcome.prediction] : [];
  });

function Waiting({
  revisions,
  outcomes,
}: {
  revisions: readonly Revision[];
  outcomes: Readonly<Record<string, Outcome>>;
}) {
  return (
    <ul>
      {revisions.map(({ id }) => {
        const outcome = outcomes[id];
        if (outcome && 'prediction' in outcome) return null;
        return <li key={id}>{`${id}: ${outcome ? `${words.refused}: ${outcome.refusal}` : words.waiting}`}</li>;
      })}
    </ul>
  );
}

function Predicted({ project, revisions }: { readonly project: Project; readonly revisions: readonly Revision[] }) {
  const outcomes = useOutcomes(
    project,
    revisions.map(({ id }) => id),
  );
  const predictions = predictionsOf(revisions, outcomes);
  const shown = revisions.filter(({ id }) => predictions.some(({ revisionId }) => revisionId === id));
  const comparison = predictions.length > 1 ? comparePredictions(predictions) : null;
  return (
    <section>
      <h3>{words.predicted}</h3>
      <Waiting {...{ revisions, outcomes }} />
      {comparison && (
        <>
          <ul className="account">
            {comparison.account.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
          <table className="compare-table">
            <Head revisions={shown} />
            <tbody>
              {comparison.rows.map((row) => (
                <tr key={row.id}>
                  <th scope="row">{row.label}</th>
                  {row.values.map((value, index) => (
                    <Value key={shown[index]?.id} value={value} first={index === 0} />
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        </>
      )}
    </section>
  );
}

function Described({ revisions }: { readonly revisions: readonly Revision[] }) {
  const [all, setAll] = useState(false);
  const rows = describedRows(revisions);
  const shown = all ? rows : rows.filter((row) => row.differs);
  return (
    <section>
      <h3>{words.described}</h3>
      <label className="check">
        <input type="checkbox" checked={!all} onChange={() => setAll(!all)} /> {words.onlyDifferent}
      </label>
      {shown.length === 0 && <p className="quiet">{words.same}</p>}
      <table className="compare-table">
        <Head revisions={revisions} />
        <tbody>
          {shown.map((row) => (
            <tr key={row.key} className={row.differs ? 'differs' : ''}>
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

function Comparison() {
  const project = useProject();
  const [chosen, choose] = useState<readonly string[]>(() => project.revisions.map(({ id }) => id).slice(-3));
  const revisions = project.revisions.filter(({ id }) => chosen.includes(id));
  return (
    <>
      <Choice {...{ project, chosen, choose }} />
      {revisions.length > 1 && (
        <>
          <Predicted {...{ project, revisions }} />
          <Described revisions={revisions} />
        </>
      )}
    </>
  );
}

/** The dialog; it calculates only while it is open. */
export function Compare() {
  const open = useView((state) => state.dialog === 'compare');
  return (
    <DialogFrame id="compare" title={words.title} wide>
      {open && <Comparison />}
    </DialogFrame>
  );
}
