/** A viscosity law fitted to pasted readings: table, choice of law, plot, constants, taking over. */

import { useEffect, useMemo, useState } from 'react';
import { IssueText } from '../fields/IssueText.tsx';
import { DialogFrame } from '../panels/DialogFrame.tsx';
import { useJob } from '../solve/job.ts';
import { useProject } from '../store/project.ts';
import { useView } from '../store/view.ts';
import { fitText as words } from '../strings/fit.ts';
import '../styles/fit.css';
import { Choices } from './Choices.tsx';
import { FitFigures } from './FitFigures.tsx';
import { FitPlot } from './FitPlot.tsx';
import type { FitAnswer, FitAsk } from './protocol.ts';
import { Readings } from './Readings.tsx';
import { startFitWorker } from './startWorker.ts';
import { type FitDraft, useFit } from './store.ts';
import { TakeOver } from './TakeOver.tsx';
import { askOf, readTable } from './table.ts';

/** A pause in typing after which the fit begins, ms. */
const pauseMs = 250;

/** The value as it was before the last pause in its changes. */
function usePaused<T>(value: T): T {
  const [paused, setPaused] = useState(value);
  useEffect(() => {
    const timer = setTimeout(() => setPaused(value), pauseMs);
    return () => clearTimeout(timer);
  }, [value]);
  return paused;
}

/** What is known of the fit so far; nothing where there is nothing to fit. */
function Outcome({
  ask,
  children,
}: {
  ask: FitAsk | null;
  children(answer: FitAnswer & { kind: 'fit' }): React.ReactNode;
}) {
  const { answers, state, fault } = useJob<FitAnswer>(startFitWorker, ask);
  const answer = answers[0];
  if (ask === null) return <p className="quiet fit-empty">{words.waiting}</p>;
  if (state === 'fault') {
    return (
      <p className="issue" role="alert">
        {words.fault}: {fault}
      </p>
    );
  }
  if (!answer) return <p className="quiet fit-empty">{words.working}</p>;
  if (answer.kind === 'fit') return children(answer);
  return (
    <div className="fit-refused">
      <h3>{words.refused}</h3>
      {answer.issues.slice(0, 8).map((issue) => (
        <IssueText key={`${issue.code}-${issue.path.join('/')}`} issue={issue} />
      ))}
    </div>
  );
}

function Parts() {
  const project = useProject();
  const draft: FitDraft = usePaused(useFit((state) => state));
  const wanted = useFit((state) => state.materialId);
  const material = project.materials.find(({ id }) => id === wanted) ?? project.materials[0];
  const { text, temperature } = draft;
  const table = useMemo(() => readTable({ text, temperature }), [text, temperature]);
  const ask = useMemo(() => askOf(draft, table, material?.filler), [draft, table, material?.filler]);
  if (!material) return null;
  return (
    <div className="fit">
      <div className="fit-left">
        <Choices materials={project.materials} material={material} />
        <Readings table={table} />
      </div>
      <div className="fit-right">
        <Outcome ask={ask}>
          {({ fit, drawing, scatterPercent }) => (
            <>
              <FitPlot drawing={drawing} />
              <FitFigures fit={fit} scatterPercent={scatterPercent} />
              <TakeOver material={material} fit={fit} />
            </>
          )}
        </Outcome>
      </div>
    </div>
  );
}

/** The dialog; nothing of it is worked out while it is closed. */
export function FitDialog() {
  const open = useView((state) => state.dialog === 'fit');
  return (
    <DialogFrame id="fit" title={words.title} wide>
      {open && <Parts />}
    </DialogFrame>
  );
}
