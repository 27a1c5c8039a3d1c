/** Reaching a goal within limits. */

import { figureOf, goalFigures, type Project, type SearchInput, type SeekSpec } from '../../core/index.ts';
import { TypedNumber } from '../fields/TypedNumber.tsx';
import { activeRevision } from '../store/project.ts';
import { searchText } from '../strings/search.ts';
import { startSeek } from './acts.ts';
import { firstGoalInput, overlapping, wholeWithin } from './bounds.ts';
import { Found } from './Found.tsx';
import { GoalInputs } from './GoalInputs.tsx';
import { Limits } from './Limits.tsx';
import { PickInput } from './PickInput.tsx';
import { RunBar, Stale } from './RunBar.tsx';
import { inSentence } from './shown.ts';
import { type SearchState, setSearch, useSearch } from './store.ts';

const words = searchText;

/** Most inputs of a goal: beyond, a few hundred designs no longer cover the range. */
const mostInputs = 6;

/** What the set-up asks for; inputs that the machine no longer has are left out. */
export function specOf(state: SearchState, inputs: readonly SearchInput[]): SeekSpec {
  return {
    inputs: state.goalInputs.flatMap((setup) => {
      const input = inputs.find(({ id }) => id === setup.input);
      return input ? [{ ...setup, label: input.label, unit: input.unit, value: input.value }] : [];
    }),
    objective: state.objective,
    limits: (state.limits ?? []).flatMap(({ figure, sense, bound, on }) => (on ? [{ figure, sense, bound }] : [])),
    budget: state.budget,
  };
}

function Objective() {
  const objective = useSearch((state) => state.objective);
  const goals = goalFigures();
  return (
    <label>
      {words.goal.title}{' '}
      <select
        value={objective.figure}
        onChange={(event) => {
          const chosen = goals.find(({ figure }) => figure === event.target.value);
          if (chosen) setSearch({ objective: chosen });
        }}
      >
        {goals.map(({ figure, sense }) => (
          <option key={figure} value={figure}>
            {`${words.goal.senses[sense]}: ${inSentence(figureOf(figure).label)}`}
          </option>
        ))}
      </select>
    </label>
  );
}

function Choices() {
  const budget = useSearch((state) => state.budget);
  const confirm = useSearch((state) => state.confirm);
  return (
    <>
      <Objective />
      <TypedNumber
        label={words.run.budget}
        unit=""
        value={budget}
        refuse={wholeWithin(10, 2000, words.run.budgetRefused)}
        take={(next) => setSearch({ budget: next })}
      />
      <label>
        <input type="checkbox" checked={confirm} onChange={(event) => setSearch({ confirm: event.target.checked })} />{' '}
        {words.run.confirm}
      </label>
    </>
  );
}

/** Of what can be chosen; a granulate is measured. */
function Picker({ project, inputs }: { readonly project: Project; readonly inputs: readonly SearchInput[] }) {
  const all = useSearch((state) => state.goalInputs);
  const revisionId = activeRevision(project).id;
  const chosen = all.map(({ input }) => input).filter((id) => inputs.some((input) => input.id === id));
  return (
    <>
      <PickInput
        inputs={inputs.filter(({ of }) => of !== 'granulate')}
        full={chosen.length >= mostInputs ? words.pick.full(mostInputs) : null}
        refuse={({ id }) => overlapping(project, revisionId, inputs, chosen, id)}
        choose={(input) => setSearch({ goalInputs: [...all, firstGoalInput(input)] })}
      />
      <p className="quiet">{words.pick.measured}</p>
    </>
  );
}

/** The part of the dialog. */
export function GoalTab({ project, inputs }: { readonly project: Project; readonly inputs: readonly SearchInput[] }) {
  const state = useSearch((whole) => whole);
  const { seekRun: run } = state;
  const spec = specOf(state, inputs);
  const revisionId = activeRevision(project).id;
  return (
    <>
      <p className="quiet">{words.waysHelp.goal}</p>
      <section aria-label={words.goal.inputs}>
        <h2>{words.goal.inputs}</h2>
        <GoalInputs inputs={inputs} />
        <Picker project={project} inputs={inputs} />
      </section>
      <Limits project={project} />
      <RunBar
        run={run}
        far={run && { done: run.news.done, of: run.news.of, phase: words.run.phases[run.news.phase] }}
        label={words.run.seek}
        problem={spec.inputs.length === 0 ? words.run.nothing : null}
        start={() => void startSeek({ project, revisionId, inputs }, spec, state.confirm)}
      >
        <Choices />
      </RunBar>
      {run && <Stale run={run} />}
      {run && <Found run={run} />}
    </>
  );
}
