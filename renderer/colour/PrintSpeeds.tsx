/** Every revision at a slow, the set and a fast print speed, and how far slow and fast layers differ. */

import { useMemo, useState } from 'react';
import { fromSi, type Project, type StudyRun } from '../../core/index.ts';
import { TypedNumber } from '../fields/TypedNumber.tsx';
import { formatNumber, formatQuantity } from '../look.ts';
import type { ColourAnswer, SpeedsAnswer, SpeedsAsk } from '../solve/colourJob.ts';
import { useJob } from '../solve/job.ts';
import { startColourWorker } from '../solve/startJobs.ts';
import { colourText } from '../strings/colour.ts';
import { Chip } from './Origin.tsx';
import { JobState } from './Studies.tsx';

const words = colourText.speeds;

/** Shares of the set print speed that slow and fast stand for until others are typed. */
const [slowShare, fastShare] = [0.5, 1.5];

const speedText = (speed: number): string => formatQuantity(speed, 'mm/s', 3);

function Cell({ run }: { readonly run: StudyRun }) {
  if (!run.point) return <td className="quiet reason-cell">{run.reason}</td>;
  const { dE00Mean, dE00Worst, srgb } = run.point;
  return (
    <td>
      <Chip fill={srgb} /> {formatNumber(dE00Mean, 2)} … {formatNumber(dE00Worst, 2)}
      <small>
        {run.screwSpeed !== null && formatQuantity(run.screwSpeed, 'rpm', 3)}
        {run.stay !== null && `, ${formatQuantity(run.stay, 's', 3)}`}
      </small>
    </td>
  );
}

function Row({
  id,
  name,
  answer,
  count,
}: {
  id: string;
  name: string;
  answer: SpeedsAnswer | undefined;
  count: number;
}) {
  return (
    <tr>
      <th scope="row" title={name}>
        <b>{id}</b> {name}
      </th>
      {answer && answer.refusal === null ? (
        <>
          {answer.runs.map((run) => (
            <Cell key={run.asked} run={run} />
          ))}
          <td>{answer.step === null ? '–' : formatNumber(answer.step, 2)}</td>
        </>
      ) : (
        <td colSpan={count + 1} className="quiet">
          {answer?.refusal ?? '…'}
        </td>
      )}
    </tr>
  );
}

/** Swatches of a slow and a fast layer side by side, and whether the step shows. */
function Layers({ answer }: { readonly answer: SpeedsAnswer | undefined }) {
  const layers = colourText.layers;
  const [slow, fast] = [answer?.runs[0]?.point, answer?.runs.at(-1)?.point];
  if (!answer) return null;
  if (!slow || !fast || answer.step === null) return <p className="quiet">{layers.none}</p>;
  return (
    <div className="layers" title={layers.help}>
      <span className="layer-stack" aria-hidden="true">
        <span className="layer" style={{ background: slow.srgb }} />
        <span className="layer" style={{ background: fast.srgb }} />
        <span className="layer" style={{ background: slow.srgb }} />
        <span className="layer" style={{ background: fast.srgb }} />
      </span>
      <p>
        <b>{layers.step(formatNumber(answer.step, 2))}</b>, {answer.step >= 1 ? layers.seen : layers.unseen}.{' '}
        <span className="quiet">{layers.help}</span>
      </p>
    </div>
  );
}

/** The two speeds that are typed. m/s. */
interface Typed {
  readonly slow: number;
  readonly fast: number;
}

function SpeedInputs({ speeds, take }: { readonly speeds: Typed; take(speeds: Typed): void }) {
  const refuse = (key: keyof Typed) => (value: number) => {
    if (!(value > 0 && value < 1e4)) return words.bad;
    const next = { ...speeds, [key]: value / 1000 };
    return next.slow < next.fast ? null : words.order;
  };
  const input = (label: string, key: keyof Typed) => (
    <TypedNumber
      label={label}
      unit="mm/s"
      value={fromSi(speeds[key], 'mm/s')}
      refuse={refuse(key)}
      take={(value) => take({ ...speeds, [key]: value / 1000 })}
    />
  );
  return (
    <>
      {input(words.slow, 'slow')} {input(words.fast, 'fast')}
    </>
  );
}

/** The section. `most` is the highest print speed that the open revision feeds, m/s, or null. */
export function PrintSpeeds(props: {
  readonly project: Project;
  readonly revisionId: string;
  readonly fields: SpeedsAsk['fields'];
  readonly most: number | null;
  readonly ready: boolean;
}) {
  const { project, revisionId, fields, most, ready } = props;
  const set = project.print.speedMmPerS / 1000;
  const [typed, setTyped] = useState<Typed | null>(null);
  const reach = most !== null && most > set ? Math.floor(most * 1000) / 1000 : Number.POSITIVE_INFINITY;
  const { slow, fast } = typed ?? { slow: slowShare * set, fast: Math.min(fastShare * set, reach) };
  const [count, setCount] = useState(0);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the count asks for the same again
  const ask = useMemo<SpeedsAsk | null>(() => {
    const revisionIds = project.revisions.map(({ id }) => id);
    return ready ? { kind: 'speeds', project, revisionIds, speeds: [slow, set, fast], fields } : null;
  }, [project, slow, set, fast, fields, ready, count]);
  const heard = useJob<ColourAnswer>(startColourWorker, ask);
  const rows = new Map(heard.answers.flatMap((one) => (one.kind === 'speeds' ? [[one.revisionId, one]] : [])));
  return (
    <section aria-label={words.title}>
      <h2>{words.title}</h2>
      <p className="quiet">{words.help}</p>
      <div className="study-bar">
        <SpeedInputs speeds={{ slow, fast }} take={setTyped} />
        {ready ? (
          <JobState heard={heard} stop={heard.stop} again={() => setCount(count + 1)} />
        ) : (
          <span className="quiet">{words.waiting}</span>
        )}
      </div>
      <table className="colour-table">
        <thead>
          <tr>
            <th scope="col">{words.revision}</th>
            <th scope="col">{speedText(slow)}</th>
            <th scope="col">{`${speedText(set)}, ${words.set}`}</th>
            <th scope="col">{speedText(fast)}</th>
            <th scope="col">{words.step}</th>
          </tr>
        </thead>
        <tbody>
          {project.revisions.map(({ id, name }) => (
            <Row key={id} id={id} name={name} answer={rows.get(id)} count={3} />
          ))}
        </tbody>
      </table>
      <h3>{colourText.layers.title}</h3>
      <Layers answer={rows.get(revisionId)} />
    </section>
  );
}
