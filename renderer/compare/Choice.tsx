/** Which revisions are compared, with which of them, and how far their calculations are. */

import { Button } from 'react-aria-components';
import type { Project } from '../../core/index.ts';
import { openHandover } from '../handover/store.ts';
import { formatNumber } from '../look.ts';
import { compareText } from '../strings/compare.ts';
import { LineSample } from './marks.tsx';
import { type Compared, goOnRuns, stopRuns, useRuns } from './runs.ts';
import { mostCompared, setCompare } from './store.ts';

const words = compareText;

/** Kind of file that holds a comparison for people: the report as a web page. */
const reportKind = 'html';

/** How far one revision is. */
function State({ one }: { readonly one: Compared }) {
  const now = useRuns((state) => (state.now?.key === one.key ? state.now : null));
  const running = useRuns((state) => state.running);
  const { found } = one;
  if (found.refusal !== undefined) return <span className="run-word bad">✕ {words.run.refused}</span>;
  if (found.fault !== undefined) return <span className="run-word bad">✕ {words.run.fault}</span>;
  if (found.solved) return <span className="run-word good">✓ {words.run.ready}</span>;
  if (now && running) {
    const what = now.fields === 'solved' ? words.run.solving : words.run.estimate;
    return (
      <span className="run-word">
        <progress max={1} value={now.done} aria-label={`${one.id}: ${what}`} /> {what}{' '}
        {formatNumber(Math.round(100 * now.done), 3)} %
      </span>
    );
  }
  const rest = running ? words.run.waiting : words.run.stopped;
  return <span className="run-word">{found.estimate ? `${words.run.estimate}, ${rest}` : rest}</span>;
}

function Stopping({ compared }: { readonly compared: readonly Compared[] }) {
  const running = useRuns((state) => state.running);
  const missing = compared.some(({ found }) => found.refusal === undefined && !found.solved);
  if (running)
    return (
      <Button className="tool" onPress={stopRuns}>
        {words.run.stop}
      </Button>
    );
  if (!missing) return null;
  return (
    <Button className="tool" onPress={goOnRuns}>
      {words.run.goOn}
    </Button>
  );
}

/** Takes a revision in or out. */
const toggled = (ids: readonly string[], id: string): readonly string[] =>
  ids.includes(id) ? ids.filter((other) => other !== id) : [...ids, id];

interface ChoiceProps {
  readonly project: Project;
  readonly ids: readonly string[];
  readonly base: string | null;
  readonly compared: readonly Compared[];
}

function Box({ project, ids, compared, id }: ChoiceProps & { readonly id: string }) {
  const place = ids.indexOf(id);
  const one = compared[place];
  const full = place < 0 && ids.length >= mostCompared;
  const name = project.revisions.find((revision) => revision.id === id)?.name ?? '';
  return (
    <label className="compare-box" title={full ? words.tooMany(mostCompared) : name}>
      <input
        type="checkbox"
        checked={place >= 0}
        disabled={full}
        onChange={() => setCompare({ chosen: toggled(ids, id) })}
      />
      {place >= 0 && <LineSample place={place} />} <b>{id}</b> <span className="compare-name">{name}</span>
      {one && <State one={one} />}
    </label>
  );
}

/** The choice. */
export function Choice(props: ChoiceProps) {
  const { project, ids, base, compared } = props;
  return (
    <div className="compare-choice">
      <fieldset>
        <legend>{words.choose}</legend>
        <div className="compare-boxes">
          {project.revisions.map(({ id }) => (
            <Box key={id} {...props} id={id} />
          ))}
        </div>
      </fieldset>
      <div className="compare-acts">
        <label>
          {words.base}{' '}
          <select value={base ?? ''} onChange={(event) => setCompare({ base: event.target.value })}>
            {ids.map((id) => (
              <option key={id} value={id}>
                {id}: {project.revisions.find((revision) => revision.id === id)?.name}
              </option>
            ))}
          </select>
        </label>
        <Stopping compared={compared} />
        {ids.length > 1 && base !== null && (
          <Button className="tool" onPress={() => openHandover(reportKind, [base, ...ids.filter((id) => id !== base)])}>
            {words.handOver}
          </Button>
        )}
      </div>
      <p className="unseen" role="status">
        {compared.map((one) => `${one.id}: ${spoken(one)}`).join('; ')}
      </p>
    </div>
  );
}

/** What is said aloud when it changes: never the percentage, which would not stop talking. */
const spoken = ({ found }: Compared): string =>
  found.refusal !== undefined
    ? words.run.refused
    : found.fault !== undefined
      ? words.run.fault
      : found.solved
        ? words.run.ready
        : found.estimate
          ? words.run.estimate
          : words.run.waiting;
