/** Colour over print speed and set temperature, and every revision at three print speeds, worked out while one looks. */

import { useMemo, useState } from 'react';
import { Button } from 'react-aria-components';
import { formatQuantity, type Project } from '../../core/index.ts';
import type { ColourAnswer, SweepsAnswer, SweepsAsk } from '../solve/colourJob.ts';
import { type Heard, useJob } from '../solve/job.ts';
import { startColourWorker } from '../solve/startJobs.ts';
import { colourText } from '../strings/colour.ts';
import { PrintSpeeds } from './PrintSpeeds.tsx';
import { Sweeps } from './Sweeps.tsx';

const words = colourText;

/** The latest answer of a kind. */
const latest = <Kind extends ColourAnswer['kind']>(answers: readonly ColourAnswer[], kind: Kind) =>
  answers.findLast((answer): answer is Extract<ColourAnswer, { kind: Kind }> => answer.kind === kind);

/** How far a job is, and the button that stops it or begins anew. */
export function JobState(props: { readonly heard: Heard<ColourAnswer>; stop(): void; again?(): void }) {
  const { heard, stop, again } = props;
  const done = latest(heard.answers, 'progress')?.done ?? 0;
  if (heard.state === 'running')
    return (
      <span className="job-state">
        <progress value={done} aria-label={words.working(formatQuantity(done, '%', 2))} />
        <span className="quiet">{words.working(formatQuantity(done, '%', 2))}</span>
        <Button className="tool" onPress={stop}>
          {words.stop}
        </Button>
      </span>
    );
  const refused = latest(heard.answers, 'refused');
  return (
    <span className="job-state">
      {heard.state === 'stopped' && <span className="quiet">{words.stopped}</span>}
      {heard.fault && <span className="issue">{heard.fault}</span>}
      {refused && <span className="issue">{refused.reason}</span>}
      {again && (heard.state === 'stopped' || heard.state === 'fault') && (
        <Button className="tool" onPress={again}>
          {words.again}
        </Button>
      )}
    </span>
  );
}

/** What the charts are asked for; a new count asks again. */
function useSweeps(project: Project, revisionId: string, fields: SweepsAsk['fields']) {
  const [count, setCount] = useState(0);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the count asks for the same again
  const ask = useMemo<SweepsAsk>(
    () => ({ kind: 'sweeps', project, revisionId, fields }),
    [project, revisionId, fields, count],
  );
  return { ...useJob<ColourAnswer>(startColourWorker, ask), again: () => setCount(count + 1) };
}

/** Both studies; the second begins when the first is through. */
export function Studies({ project, revisionId }: { readonly project: Project; readonly revisionId: string }) {
  const [solved, setSolved] = useState(false);
  const heard = useSweeps(project, revisionId, solved ? 'solved' : 'formula');
  const sweeps: SweepsAnswer | undefined = latest(heard.answers, 'sweeps');
  return (
    <>
      <div className="study-bar colour-studies">
        <label className="check">
          <input type="checkbox" checked={solved} onChange={() => setSolved(!solved)} /> {words.solveEach}
        </label>
        {sweeps && <span className="quiet">{sweeps.fields === 'solved' ? words.byFields : words.byFormulas}.</span>}
        <JobState heard={heard} stop={heard.stop} again={heard.again} />
      </div>
      {sweeps && <Sweeps sweeps={sweeps} setSpeed={project.print.speedMmPerS / 1000} done={heard.state === 'done'} />}
      <PrintSpeeds
        project={project}
        revisionId={revisionId}
        fields={solved ? 'solved' : 'formula'}
        most={sweeps?.most ?? null}
        ready={heard.state === 'done' || heard.state === 'stopped'}
      />
    </>
  );
}
