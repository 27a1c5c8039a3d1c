/** How sure a prediction is: ranges in, bands and ranked unknowns out. */

import { useMemo, useState } from 'react';
import { Button } from 'react-aria-components';
import type { Project } from '../../core/index.ts';
import { goToRefused } from '../fields/refused.ts';
import { TypedNumber } from '../fields/TypedNumber.tsx';
import { DialogFrame } from '../panels/DialogFrame.tsx';
import type { DoubtAnswer } from '../solve/doubtProtocol.ts';
import { useJob } from '../solve/job.ts';
import { startDoubtWorker } from '../solve/startJobs.ts';
import { activeRevision, useProject } from '../store/project.ts';
import { useView } from '../store/view.ts';
import { doubtText } from '../strings/doubt.ts';
import { AddRange } from './AddRange.tsx';
import { Answer } from './Answer.tsx';
import { Inputs } from './Inputs.tsx';
import { type Study, useStudy } from './useStudy.ts';

const words = doubtText;

/** Samples and seed to begin with. */
const first = { samples: 64, seed: 1 };

const wholeWithin = (least: number, most: number, refusal: string) => (value: number) =>
  Number.isInteger(value) && value >= least && value <= most ? null : refusal;

function Progress({ study }: { readonly study: Study }) {
  const said = words.run.progress(study.done, study.samples);
  if (study.state === 'running')
    return (
      <>
        <progress value={study.done / Math.max(1, study.samples)} aria-label={said} />
        <span className="quiet">{said}</span>
      </>
    );
  if (study.state === 'stopped') return <span className="quiet">{`${words.run.stopped} ${said}`}</span>;
  return study.fault ? <span className="issue">{study.fault}</span> : null;
}

function RunBar(props: { readonly study: Study; start(samples: number, seed: number): void; stop(): void }) {
  const { study, start, stop } = props;
  const [{ samples, seed }, set] = useState(first);
  return (
    <div className="study-bar">
      <TypedNumber
        label={words.run.samples}
        unit=""
        value={samples}
        refuse={wholeWithin(8, 2000, words.run.samplesRefused)}
        take={(value) => set({ samples: value, seed })}
      />
      <span title={words.run.seedHelp}>
        <TypedNumber
          label={words.run.seed}
          unit=""
          value={seed}
          refuse={wholeWithin(0, 999_999, words.run.seedRefused)}
          take={(value) => set({ samples, seed: value })}
        />
      </span>
      {study.state === 'running' ? (
        <Button className="tool" onPress={stop}>
          {words.run.stop}
        </Button>
      ) : (
        <Button className="tool" onPress={({ target }) => goToRefused(target) || start(samples, seed)}>
          {words.run.start}
        </Button>
      )}
      <Progress study={study} />
      <span className="quiet">{words.run.estimate}</span>
    </div>
  );
}

/** What is doubtful, asked anew whenever the project changes. */
function useFound(project: Project, revisionId: string) {
  const ask = useMemo(() => ({ kind: 'inputs', project, revisionId }), [project, revisionId]);
  const heard = useJob<DoubtAnswer>(startDoubtWorker, ask);
  const answer = heard.answers.findLast((one) => one.kind === 'inputs');
  const [kept, keep] = useState(answer);
  if (answer && answer !== kept) keep(answer);
  return answer ?? kept;
}

function Content() {
  const project = useProject();
  const revisionId = activeRevision(project).id;
  const found = useFound(project, revisionId);
  const { study, start, stop } = useStudy(startDoubtWorker);
  const own = useMemo(() => new Set(project.doubts?.map(({ path }) => path)), [project.doubts]);
  const old = study.drawn !== null && (study.drawn.project !== project || study.drawn.revisionId !== revisionId);
  return (
    <div className="doubt-room">
      <RunBar study={study} start={(samples, seed) => start(project, revisionId, samples, seed)} stop={stop} />
      {old && <p className="doubt">▲ {words.run.old}</p>}
      {study.summary && study.summary.done > 0 && <Answer summary={study.summary} />}
      <section aria-label={words.inputs}>
        <h2>{words.inputs}</h2>
        <p className="quiet">{words.inputsHelp}</p>
        {found && <Inputs found={found.found} own={own} />}
        {found && <AddRange fields={found.fields} />}
      </section>
    </div>
  );
}

/** The dialog; it calculates only while it is open. */
export function Doubt() {
  const open = useView((state) => state.dialog === 'doubt');
  return (
    <DialogFrame id="doubt" title={words.title} wide>
      {open && <Content />}
    </DialogFrame>
  );
}
