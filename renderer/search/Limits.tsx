/** The limits of a goal: which count, and their bounds. */

import { Button } from 'react-aria-components';
import { figureOf, fromSi, type Project, type SeekLimit, searchFigures, toSi } from '../../core/index.ts';
import { TypedNumber } from '../fields/TypedNumber.tsx';
import { useLook } from '../look.ts';
import { activeRevision } from '../store/project.ts';
import { searchText } from '../strings/search.ts';
import { proposeAnew } from './proposals.ts';
import { inSentence, shownFigure } from './shown.ts';
import { type LimitSetup, setSearch, useSearch } from './store.ts';

const words = searchText.goal;

const senses = ['atLeast', 'atMost'] as const;

type Alter = (more: Partial<LimitSetup>) => void;

const clean = (value: number): number => Number(value.toPrecision(10));

/** Which way a limit holds; a way that another limit on the figure has is not offered. */
function SenseChoice({ limit, at, set }: { readonly limit: LimitSetup; readonly at: number; readonly set: Alter }) {
  const limits = useSearch((state) => state.limits) ?? [];
  const free = (sense: SeekLimit['sense']) =>
    !limits.some((one, i) => i !== at && one.figure === limit.figure && one.sense === sense);
  const take = (sense: SeekLimit['sense'] | undefined) => {
    if (sense && free(sense)) set({ sense, why: words.own, own: true });
  };
  return (
    <select
      aria-label={words.keep}
      value={limit.sense}
      onChange={(event) => take(senses.find((sense) => sense === event.target.value))}
    >
      {senses.map((sense) => (
        <option key={sense} value={sense} disabled={!free(sense)}>
          {words.sensesOf[sense]}
        </option>
      ))}
    </select>
  );
}

function RemoveLimit({ label, at }: { readonly label: string; readonly at: number }) {
  const limits = useSearch((state) => state.limits) ?? [];
  return (
    <Button
      className="tiny"
      aria-label={words.remove(inSentence(label))}
      onPress={() => setSearch({ limits: limits.filter((_, i) => i !== at) })}
    >
      ×
    </Button>
  );
}

function LimitRow({ limit, at }: { readonly limit: LimitSetup; readonly at: number }) {
  const limits = useSearch((state) => state.limits) ?? [];
  const base = useSearch((state) => state.seekRun?.news.result?.base ?? null);
  const { label, unit } = figureOf(limit.figure);
  const set: Alter = (more) => setSearch({ limits: limits.map((one, i) => (i === at ? { ...one, ...more } : one)) });
  const bound = unit === '' ? limit.bound : clean(fromSi(limit.bound, unit));
  const state = (next: number) =>
    set({ bound: unit === '' ? next : toSi(next, unit), why: words.own, on: true, own: true });
  return (
    <tr className={limit.on ? '' : 'quiet'}>
      <th scope="row">
        <label>
          <input type="checkbox" checked={limit.on} onChange={(event) => set({ on: event.target.checked })} /> {label}
        </label>
      </th>
      <td>
        <SenseChoice limit={limit} at={at} set={set} />
      </td>
      <td>
        <TypedNumber label={words.bound} unit={unit} value={bound} take={state} />
      </td>
      <td>{base ? shownFigure(base.figures[limit.figure], unit) : '–'}</td>
      <td className="why-cell" title={limit.why}>
        {limit.why}
      </td>
      <td>
        <RemoveLimit label={label} at={at} />
      </td>
    </tr>
  );
}

/** A limit on any figure, at what the present design has, or at nothing. */
function AddLimit() {
  const limits = useSearch((state) => state.limits) ?? [];
  const base = useSearch((state) => state.seekRun?.news.result?.base ?? null);
  const add = (figure: string) => {
    const usual: SeekLimit['sense'] = figureOf(figure).better === 'more' ? 'atLeast' : 'atMost';
    const there = limits.filter((limit) => limit.figure === figure).map(({ sense }) => sense);
    // a second limit on a figure closes it from the other side; a third would say nothing
    const sense = [usual, usual === 'atMost' ? ('atLeast' as const) : ('atMost' as const)].find(
      (one) => !there.includes(one),
    );
    if (sense === undefined) return;
    const bound = base?.figures[figure] ?? 0;
    setSearch({ limits: [...limits, { figure, sense, bound, on: base !== null, why: words.own, own: true }] });
  };
  return (
    <select aria-label={words.add} value="" onChange={(event) => event.target.value !== '' && add(event.target.value)}>
      <option value="">{`${words.add}: ${words.choose}`}</option>
      {searchFigures.map(({ id, label }) => (
        <option key={id} value={id}>
          {label}
        </option>
      ))}
    </select>
  );
}

/** A row's own key: the figure, and which of the limits on it; the sense may change while a row is worked on. */
const keyOf = (limits: readonly LimitSetup[], at: number): string => {
  const { figure } = limits[at] as LimitSetup;
  return `${figure} ${limits.slice(0, at).filter((one) => one.figure === figure).length}`;
};

/** The section. */
export function Limits({ project }: { readonly project: Project }) {
  const limits = useSearch((state) => state.limits) ?? [];
  useLook();
  const heads = [words.limit, words.keep, words.bound, words.presently, words.why];
  return (
    <section aria-label={words.limits}>
      <h2>{words.limits}</h2>
      <p className="quiet">{words.limitsHelp}</p>
      <table className="doubt-table search-limits">
        <thead>
          <tr>
            {heads.map((head) => (
              <th key={head} scope="col" className={head === words.why ? 'why-cell' : undefined}>
                {head}
              </th>
            ))}
            <td />
          </tr>
        </thead>
        <tbody>
          {limits.map((limit, i) => (
            <LimitRow key={keyOf(limits, i)} limit={limit} at={i} />
          ))}
        </tbody>
      </table>
      <div className="study-bar">
        <AddLimit />
        <Button className="tool" onPress={() => proposeAnew(project, activeRevision(project).id)}>
          {words.propose}
        </Button>
      </div>
    </section>
  );
}
