/** One candidate in full: what it changes, its limits, every figure, what a maker's step does; taking it over. */

import { useEffect, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import type { Candidate, FigureChange, LimitState } from '../../core/index.ts';
import { useProject } from '../store/project.ts';
import { setView } from '../store/view.ts';
import { searchText } from '../strings/search.ts';
import { Sensitivity } from './Sensitivity.tsx';
import { inSentence, shownChange, shownFigure, shownValue } from './shown.ts';
import { type ChosenCandidate, type SeekRun, setSearch, useSearch } from './store.ts';
import { isShared, takenAs, takeOver } from './takeOver.ts';

const words = searchText.detail;

function Changed({ run, candidate }: { readonly run: SeekRun; readonly candidate: Candidate }) {
  return (
    <section>
      <h3>{words.inputs}</h3>
      <table className="doubt-table">
        <thead>
          <tr>
            <th scope="col">{searchText.input}</th>
            <th scope="col">{words.before}</th>
            <th scope="col">{words.after}</th>
            <td />
          </tr>
        </thead>
        <tbody>
          {run.spec.inputs.map(({ input, label, unit, value }) => {
            const change = candidate.design.changes.find((one) => one.input === input);
            const end = candidate.atEnd.find((one) => one.input === input)?.end;
            return (
              <tr key={input}>
                <th scope="row">{label}</th>
                <td>{shownValue(value, unit)}</td>
                <td>
                  <b>{shownValue(change?.value ?? value, unit)}</b>
                </td>
                <td className="from-cell">{end ? `▲ ${words.atEnd(end)}` : ''}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </section>
  );
}

function LimitRow({ limit }: { readonly limit: LimitState }) {
  const { label, sense, bound, unit, value, state } = limit;
  return (
    <tr className={state}>
      <th scope="row">{`${label} ${searchText.goal.sensesOf[sense]} ${shownFigure(bound, unit)}`}</th>
      <td>{shownFigure(value, unit)}</td>
      <td className="from-cell">{words.states[state]}</td>
    </tr>
  );
}

/** Every limit; nothing where the search had none. */
function Kept({ candidate }: { readonly candidate: Candidate }) {
  if (candidate.limits.length === 0) return null;
  return (
    <section>
      <h3>{words.limits}</h3>
      <table className="doubt-table">
        <tbody>
          {candidate.limits.map((limit) => (
            <LimitRow key={`${limit.figure} ${limit.sense}`} limit={limit} />
          ))}
        </tbody>
      </table>
    </section>
  );
}

function FigureRow({ figure }: { readonly figure: FigureChange }) {
  const { label, unit, before, value, change, verdict } = figure;
  return (
    <tr className={verdict === 'smaller than the model error' || verdict === 'same' ? 'quiet' : ''}>
      <th scope="row">{label}</th>
      <td>{shownFigure(before, unit)}</td>
      <td>{shownFigure(value, unit)}</td>
      <td>{shownChange(change)}</td>
      <td className="from-cell">{words.verdicts[verdict]}</td>
    </tr>
  );
}

function Figures({ candidate }: { readonly candidate: Candidate }) {
  return (
    <section>
      <h3>{words.figures}</h3>
      <table className="doubt-table">
        <thead>
          <tr>
            <th scope="col">{searchText.result.figure}</th>
            <th scope="col">{words.before}</th>
            <th scope="col">{words.after}</th>
            <th scope="col">{words.change}</th>
            <td />
          </tr>
        </thead>
        <tbody>
          {candidate.figures.map((figure) => (
            <FigureRow key={figure.id} figure={figure} />
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** Making it a revision, and what then. */
function Take(props: { readonly run: SeekRun; readonly chosen: ChosenCandidate; readonly candidate: Candidate }) {
  const { run, chosen, candidate } = props;
  const all = useSearch((state) => state.taken);
  const taken = takenAs(all, candidate.design.changes, useProject());
  const [refusal, refuse] = useState<string | null>(null);
  const shared = run.spec.inputs.some(({ input }) => isShared(input));
  if (taken !== null)
    return (
      <p className="study-bar" role="status">
        ✓ {words.taken(taken)}
        <Button className="tool" onPress={() => setView({ dialog: 'doubt' })}>
          {words.doubt}
        </Button>
      </p>
    );
  return (
    <>
      <div className="study-bar">
        <Button className="tool primary" onPress={() => refuse(takeOver(run, chosen))}>
          {words.take}
        </Button>
        <span className="quiet">{words.takeHelp}</span>
      </div>
      {refusal !== null && (
        <p className="issue" role="alert">
          ✕ {refusal}
        </p>
      )}
      {shared && <p className="doubt">▲ {words.shared}</p>}
    </>
  );
}

/** The panel below the table; it comes into sight when it opens. */
export function Detail(props: {
  readonly run: SeekRun;
  readonly chosen: ChosenCandidate;
  readonly candidate: Candidate;
}) {
  const { run, chosen, candidate } = props;
  const panel = useRef<HTMLElement>(null);
  useEffect(() => panel.current?.scrollIntoView?.({ block: 'nearest' }), []);
  const title = words.title(candidate.rank);
  const from = chosen.from === 'solved' ? searchText.found.solved : searchText.found.estimates;
  return (
    <section className="candidate-detail" aria-label={title} ref={panel}>
      <header className="study-bar">
        <h2>{`${title}, ${inSentence(from)}`}</h2>
        <Button className="tool" onPress={() => setSearch({ chosen: null })}>
          {words.close}
        </Button>
      </header>
      <Take run={run} chosen={chosen} candidate={candidate} />
      <div className="candidate-columns">
        <div>
          <Changed run={run} candidate={candidate} />
          <Kept candidate={candidate} />
          <Sensitivity run={run} candidate={candidate} />
        </div>
        <Figures candidate={candidate} />
      </div>
    </section>
  );
}
