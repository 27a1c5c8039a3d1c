/** Paints the melt where the machine is open. */

import { useEvaluation } from '../store/evaluation.ts';
import { useMelt } from '../store/melt.ts';
import { activeRevision, useProjectState } from '../store/project.ts';
import { MeltPaint } from './MeltPaint.tsx';
import { useMeltShown, useOpenPlanes } from './openPlanes.ts';

/** The painted melt of the latest solved fields; nothing until there are any. */
export function MeltInScene({ onPainted }: { onPainted(triangles: number): void }) {
  const shown = useMeltShown();
  const painted = useMelt((state) => state.painted);
  const prediction = useEvaluation((state) => state.solved);
  const old = useEvaluation((state) => state.solvedOld);
  const azimuths = useOpenPlanes();
  const hand = useProjectState((state) => (state.history ? activeRevision(state.history.present).screw.hand : 'right'));
  if (!shown || !prediction?.fields) return null;
  return <MeltPaint {...{ prediction, azimuths, hand, painted, old, onPainted }} />;
}
