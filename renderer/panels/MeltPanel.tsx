/** Where melt stays: dead spots and cross-sections from solved fields, or why there are none yet. */

import { useEvaluation } from '../store/evaluation.ts';
import { meltText } from '../strings/melt.ts';
import { Across } from './Across.tsx';
import { DeadSpots } from './DeadSpots.tsx';

const words = meltText;

/** Why no fields can be shown. */
export function MeltNeeds() {
  const solving = useEvaluation((state) => state.running || state.solving);
  const flows = useEvaluation((state) => (state.prediction?.output.volumeFlow ?? 0) > 0);
  const none = useEvaluation((state) => state.prediction === null);
  const why = none
    ? words.needs.none
    : solving
      ? words.needs.solving
      : flows
        ? words.needs.stopped
        : words.needs.noFlow;
  return <p className="quiet">{why}</p>;
}

/** The section of the right side. */
export function MeltPanel() {
  const solved = useEvaluation((state) => state.solved);
  const old = useEvaluation((state) => state.solved !== null && state.solvedOld);
  const fields = solved?.fields ?? null;
  return (
    <section className={old ? 'melt stale' : 'melt'} aria-label={words.title} data-old={old}>
      <h2>
        {words.title} {old && <span className="quiet">{words.states.old}</span>}
      </h2>
      {solved && fields ? (
        <>
          <DeadSpots prediction={solved} />
          <Across prediction={solved} fields={fields} />
        </>
      ) : (
        <MeltNeeds />
      )}
    </section>
  );
}
