/** Candidates as a table that can be sorted; a press shows one in full. */

import { useState } from 'react';
import { Button } from 'react-aria-components';
import { type Candidate, figureOf, type SeekResult } from '../../core/index.ts';
import { searchText } from '../strings/search.ts';
import { inputTitle, shownChange, shownFigure, shownValue } from './shown.ts';
import { pressed, type Sorting, sorted } from './sorting.ts';
import { type ChosenCandidate, type SeekRun, setSearch, useSearch } from './store.ts';

const words = searchText.found;

/** Figures beside the objective that a glance wants. */
const glance = ['t95', 'dE00Worst', 'margin', 'torqueShare'] as const;

/** Columns of figures: the objective, then the usual ones. */
const columnsOf = (objective: string): readonly string[] => [objective, ...glance.filter((id) => id !== objective)];

function Head(props: {
  readonly by: string;
  readonly label: string;
  readonly sorting: Sorting;
  take(sorting: Sorting): void;
}) {
  const { by, label, sorting, take } = props;
  const here = sorting.by === by;
  return (
    <th scope="col" aria-sort={here ? (sorting.falling ? 'descending' : 'ascending') : 'none'}>
      <Button className="sort-head" aria-label={words.sort(label)} onPress={() => take(pressed(sorting, by))}>
        {label} {here ? (sorting.falling ? '▾' : '▴') : ''}
      </Button>
    </th>
  );
}

/** The objective with its change; the others as they are. */
function FigureCell({
  candidate,
  id,
  first,
}: {
  readonly candidate: Candidate;
  readonly id: string;
  readonly first: boolean;
}) {
  const found = candidate.figures.find((figure) => figure.id === id);
  const within = found?.verdict === 'smaller than the model error';
  return (
    <td>
      {shownFigure(found?.value, figureOf(id).unit)}
      {first && found && (
        <small className="quiet"> {within ? `(${words.within})` : `(${shownChange(found.change)})`}</small>
      )}
    </td>
  );
}

function Row(props: {
  readonly candidate: Candidate;
  readonly run: SeekRun;
  readonly figures: readonly string[];
  readonly from: ChosenCandidate['from'];
}) {
  const { candidate, run, figures, from } = props;
  const chosen = useSearch((state) => state.chosen);
  const here = chosen?.from === from && chosen.rank === candidate.rank;
  const unmet = candidate.limits.filter(({ state }) => state === 'unmet').length;
  const choose = () => setSearch({ chosen: { from, rank: candidate.rank } });
  return (
    <tr className={here ? 'chosen' : ''}>
      <th scope="row">
        <Button className="tool" aria-pressed={here} aria-label={words.open(candidate.rank)} onPress={choose}>
          {candidate.rank}
        </Button>
      </th>
      {run.spec.inputs.map(({ input, unit, value }) => {
        const change = candidate.design.changes.find((one) => one.input === input);
        return <td key={input}>{shownValue(change?.value ?? value, unit)}</td>;
      })}
      {figures.map((id, i) => (
        <FigureCell key={id} candidate={candidate} id={id} first={i === 0} />
      ))}
      <td className="from-cell">{unmet === 0 ? `✓ ${words.kept}` : `✕ ${words.unmet(unmet)}`}</td>
    </tr>
  );
}

/** The table. */
export function Candidates(props: {
  readonly run: SeekRun;
  readonly result: SeekResult;
  readonly from: ChosenCandidate['from'];
}) {
  const { run, result, from } = props;
  const [sorting, sort] = useState<Sorting>({ by: 'rank', falling: false });
  const figures = columnsOf(run.spec.objective.figure);
  const head = (by: string, label: string) => <Head key={by} by={by} label={label} sorting={sorting} take={sort} />;
  return (
    <div className="candidates-box">
      <table className="doubt-table candidates" aria-label={from === 'solved' ? words.solved : words.estimates}>
        <thead>
          <tr>
            {head('rank', words.rank)}
            {run.spec.inputs.map((input) => head(input.input, inputTitle(input)))}
            {figures.map((id) => head(id, figureOf(id).label))}
            <th scope="col" className="from-cell">
              {words.meets}
            </th>
          </tr>
        </thead>
        <tbody>
          {sorted(result.candidates, sorting).map((candidate) => (
            <Row key={candidate.rank} candidate={candidate} run={run} figures={figures} from={from} />
          ))}
        </tbody>
      </table>
    </div>
  );
}
