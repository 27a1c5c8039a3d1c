/** The right side: refusals, verdict, findings, curve and figures, top to bottom in the order of deciding. */

import { memo } from 'react';
import { Button } from 'react-aria-components';
import { MoreCurves } from '../plots/MoreCurves.tsx';
import { OutputCurve } from '../plots/OutputCurve.tsx';
import { retryRun, solveFields, stopFields } from '../solve/follow.ts';
import { useEvaluation } from '../store/evaluation.ts';
import { text } from '../strings.ts';
import { Figures } from './Figures.tsx';
import { Findings } from './Findings.tsx';
import { MeltPanel } from './MeltPanel.tsx';
import { PrintSide } from './PrintSide.tsx';
import { Refused } from './Refused.tsx';
import { Verdict } from './Verdict.tsx';

const words = text.verdict;
const fieldWords = text.melt.states;

/** How far a run is, in words. */
const working = (what: string, progress: { readonly done: number; readonly stage: string } | null): string =>
  progress ? `${what} ${Math.round(100 * progress.done)} % ${progress.stage}` : what;

/** Time of a run: ms while short. */
const timeText = (ms: number): string => (ms < 1000 ? `${Math.round(ms)} ms` : `${(ms / 1000).toFixed(1)} s`);

function useRunText(): string {
  const { running, stale, first, progress, solving, solveProgress, tookMs, prediction } = useEvaluation(
    (state) => state,
  );
  if (first) return words.first;
  if (running) return working(words.working, progress);
  if (stale) return words.stale;
  if (solving)
    return solveProgress ? `${fieldWords.solving} ${Math.round(100 * solveProgress.done)} %` : fieldWords.solving;
  if (tookMs === null || !prediction) return '';
  const kind = prediction.options.fields === 'solved' ? fieldWords.solved : fieldWords.estimate;
  return `${kind} · ${timeText(tookMs)}`;
}

/** Stops solving, or begins it again after it was stopped. */
function FieldsButton() {
  const { running, stale, solving, prediction } = useEvaluation((state) => state);
  if (running || stale || !prediction) return null;
  if (solving) {
    return (
      <Button className="link" onPress={stopFields}>
        <span title={fieldWords.stopHelp}>{fieldWords.stop}</span>
      </Button>
    );
  }
  if (prediction.options.fields === 'solved' || !(prediction.output.volumeFlow > 0)) return null;
  return (
    <Button className="link" onPress={solveFields}>
      {fieldWords.solve}
    </Button>
  );
}

/** Says what the numbers rest on and whether they are current. */
function RunState() {
  const busy = useEvaluation((state) => state.running || state.stale || state.solving);
  const said = useRunText();
  const stage = useEvaluation((state) => (state.solving ? state.solveProgress?.stage : undefined));
  return (
    <span className="run" title={stage}>
      <output className={busy ? 'run-state busy' : 'run-state'} aria-live="polite">
        {said}
      </output>{' '}
      <FieldsButton />
    </span>
  );
}

function Fault() {
  const fault = useEvaluation((state) => state.fault);
  if (!fault) return null;
  return (
    <div className="refused" role="alert">
      <h2>{words.fault}</h2>
      <p>{fault}</p>
      <Button className="tool" onPress={retryRun}>
        {words.retry}
      </Button>
    </div>
  );
}

/** Follows the prediction alone: that it goes out of date draws nothing of it anew. */
const Body = memo(function ResultsBody() {
  const prediction = useEvaluation((state) => state.prediction);
  return (
    <div className="results-body">
      <Fault />
      <Refused />
      {prediction && (
        <>
          <Verdict prediction={prediction} />
          <Findings findings={prediction.findings} />
          <PrintSide prediction={prediction} />
          <MeltPanel />
          <OutputCurve prediction={prediction} />
          <MoreCurves />
          <Figures />
        </>
      )}
    </div>
  );
});

/** All results of the open revision. */
export function Results() {
  const stale = useEvaluation((state) => state.stale);
  const solving = useEvaluation((state) => state.solving);
  const fields = useEvaluation((state) => state.prediction?.options.fields);
  return (
    <section
      className="pane results"
      aria-label={words.title}
      data-stale={stale}
      data-solving={solving}
      data-fields={fields}
    >
      <header className="pane-head">
        <h2>{words.title}</h2>
        <RunState />
      </header>
      <Body />
    </section>
  );
}
