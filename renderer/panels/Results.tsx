/** The right side: refusals, verdict, findings, curve and figures, top to bottom in the order of deciding. */

import { Button } from 'react-aria-components';
import { MoreCurves } from '../plots/MoreCurves.tsx';
import { OutputCurve } from '../plots/OutputCurve.tsx';
import { retryRun } from '../solve/follow.ts';
import { useEvaluation } from '../store/evaluation.ts';
import { text } from '../strings.ts';
import { Figures } from './Figures.tsx';
import { Findings } from './Findings.tsx';
import { Refused } from './Refused.tsx';
import { Verdict } from './Verdict.tsx';

const words = text.verdict;

/** Says whether what is shown is current. */
function RunState() {
  const running = useEvaluation((state) => state.running);
  const stale = useEvaluation((state) => state.stale);
  const progress = useEvaluation((state) => state.progress);
  const took = useEvaluation((state) => state.tookMs);
  const current = took === null ? '' : `${words.current} · ${Math.round(took)} ms`;
  const working = progress ? `${words.working} ${Math.round(100 * progress.done)} % ${progress.stage}` : words.working;
  return (
    <output className={running || stale ? 'run-state busy' : 'run-state'} aria-live="polite">
      {running ? working : stale ? words.stale : current}
    </output>
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

/** All results of the open revision. */
export function Results() {
  const prediction = useEvaluation((state) => state.prediction);
  const stale = useEvaluation((state) => state.stale);
  return (
    <section className="pane results" aria-label={words.title} data-stale={stale}>
      <header className="pane-head">
        <h2>{words.title}</h2>
        <RunState />
      </header>
      <div className="results-body">
        <Fault />
        <Refused />
        {prediction && (
          <>
            <Verdict prediction={prediction} />
            <Findings findings={prediction.findings} />
            <OutputCurve prediction={prediction} />
            <MoreCurves />
            <Figures />
          </>
        )}
      </div>
    </section>
  );
}
