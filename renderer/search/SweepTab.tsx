/** Trying values: one input gives a curve, two give a map. */

import { type Project, type SearchInput, sweepPlan } from '../../core/index.ts';
import { activeRevision } from '../store/project.ts';
import { searchText } from '../strings/search.ts';
import { AxisRows } from './AxisRows.tsx';
import { startSweep } from './acts.ts';
import { firstAxis, overlapping } from './bounds.ts';
import { PickInput } from './PickInput.tsx';
import { RunBar, Stale } from './RunBar.tsx';
import { SweepResult } from './SweepResult.tsx';
import { type AxisSetup, setSearch, useSearch } from './store.ts';

const words = searchText;

/** Most inputs of a sweep. */
const mostAxes = 2;

const ways = ['formula', 'solved'] as const;

function FieldsChoice() {
  const fields = useSearch((state) => state.sweepFields);
  return (
    <label>
      {words.run.fields}{' '}
      <select
        value={fields}
        onChange={(event) => setSearch({ sweepFields: event.target.value === 'solved' ? 'solved' : 'formula' })}
      >
        {ways.map((way) => (
          <option key={way} value={way}>
            {words.run.fieldsNames[way]}
          </option>
        ))}
      </select>
    </label>
  );
}

/** What is varied, and another input to add. */
function Varied(props: {
  readonly project: Project;
  readonly inputs: readonly SearchInput[];
  readonly there: readonly AxisSetup[];
}) {
  const { project, inputs, there } = props;
  const chosen = there.map(({ input }) => input);
  return (
    <>
      <AxisRows inputs={inputs} />
      <PickInput
        inputs={inputs}
        full={there.length >= mostAxes ? words.pick.full(mostAxes) : null}
        refuse={({ id }) => overlapping(project, activeRevision(project).id, inputs, chosen, id)}
        choose={(input) => setSearch({ axes: [...there, firstAxis(input, there.length === 0)] })}
      />
    </>
  );
}

/** The part of the dialog. */
export function SweepTab({ project, inputs }: { readonly project: Project; readonly inputs: readonly SearchInput[] }) {
  const axes = useSearch((state) => state.axes);
  const fields = useSearch((state) => state.sweepFields);
  const run = useSearch((state) => state.sweepRun);
  const revisionId = activeRevision(project).id;
  const there = axes.filter(({ input }) => inputs.some(({ id }) => id === input));
  const plan = there.length > 0 ? sweepPlan(project, revisionId, inputs, there) : null;
  const [issue] = plan && !plan.ok ? plan.issues : [];
  const start = () => {
    if (plan?.ok) void startSweep({ project, revisionId, inputs }, plan.value, fields);
  };
  return (
    <>
      <p className="quiet">{words.waysHelp.sweep}</p>
      <Varied project={project} inputs={inputs} there={there} />
      <RunBar
        run={run}
        far={run && { done: run.done, of: run.plan.candidates.length }}
        label={plan?.ok ? `${words.run.sweep}: ${words.run.designs(plan.value.candidates.length)}` : words.run.sweep}
        problem={plan === null ? words.run.nothing : issue ? [issue.message, issue.remedy].join(' ') : null}
        start={start}
      >
        <FieldsChoice />
      </RunBar>
      {run && <Stale run={run} />}
      {run && <SweepResult run={run} />}
    </>
  );
}
