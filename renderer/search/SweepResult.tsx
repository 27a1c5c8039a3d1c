/** What a sweep found: figures to choose, the curve or the map, all values as a table. */

import { searchFigures } from '../../core/index.ts';
import { useLook } from '../look.ts';
import { searchText } from '../strings/search.ts';
import { SweepChart } from './SweepChart.tsx';
import { SweepMap } from './SweepMap.tsx';
import { SweepValues } from './SweepValues.tsx';
import { type SweepRun, setSearch, useSearch } from './store.ts';

const words = searchText.result;

function FigureChoice(props: {
  readonly label: string;
  readonly value: string;
  readonly none?: string;
  take(id: string): void;
}) {
  return (
    <label>
      {props.label}{' '}
      <select value={props.value} onChange={(event) => props.take(event.target.value)}>
        {props.none && <option value="">{props.none}</option>}
        {searchFigures.map(({ id, label }) => (
          <option key={id} value={id}>
            {label}
          </option>
        ))}
      </select>
    </label>
  );
}

/** The section. */
export function SweepResult({ run }: { readonly run: SweepRun }) {
  const [first, second] = useSearch((state) => state.shown);
  const hatch = useSearch((state) => state.hatchLimits);
  const look = useLook();
  const single = run.plan.axes.length === 1;
  const holes = run.designs.filter((design) => design && design.hole !== null).length;
  return (
    <section className="search-result" aria-label={searchText.found.title}>
      <div className="study-bar">
        <FigureChoice label={words.figure} value={first} take={(id) => setSearch({ shown: [id, second] })} />
        {single && (
          <FigureChoice
            label={words.second}
            value={second ?? ''}
            none={words.noSecond}
            take={(id) => setSearch({ shown: [first, id === '' ? null : id] })}
          />
        )}
        <label>
          <input
            type="checkbox"
            checked={hatch}
            onChange={(event) => setSearch({ hatchLimits: event.target.checked })}
          />{' '}
          {words.hatch}
        </label>
      </div>
      {single ? (
        <SweepChart key={`${first} ${second} ${look.system}`} run={run} />
      ) : (
        <SweepMap key={`${run.since}`} run={run} />
      )}
      <p className="quiet">
        {run.fields === 'solved' ? words.bySolved : words.byFormulas}
        {holes > 0 && ` ${words.holes(holes, run.plan.candidates.length)}.`}
      </p>
      <SweepValues run={run} />
    </section>
  );
}
