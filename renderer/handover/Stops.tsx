/** Findings marked Stop, told beside files of bodies and drawings, which are written from the description alone. */

import { useEvaluation } from '../store/evaluation.ts';
import { useProject } from '../store/project.ts';
import { handoverText as words } from '../strings/handover.ts';

/** Those of the open revision where it is handed over and predicted as it is described; else nothing. */
export function Stops({ revisionIds }: { readonly revisionIds: readonly string[] }) {
  const { activeRevision } = useProject();
  const findings = useEvaluation(({ prediction, stale }) => (stale ? undefined : prediction?.findings));
  const stops = revisionIds.includes(activeRevision) ? findings?.filter(({ severity }) => severity === 'stop') : [];
  if (!stops?.length) return null;
  return (
    <aside className="handover-cautions" aria-label={words.stops}>
      <h3>
        <span aria-hidden="true">⬣</span> {words.stops}
      </h3>
      <ul>
        {stops.map(({ code, saw, where }) => (
          <li key={`${code}-${where}`}>{saw}</li>
        ))}
      </ul>
    </aside>
  );
}
