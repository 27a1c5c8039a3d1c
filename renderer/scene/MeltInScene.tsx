/** Paints the melt where the machine is open. */

import { useEvaluation } from '../store/evaluation.ts';
import { useMelt } from '../store/melt.ts';
import { MeltPaint } from './MeltPaint.tsx';
import { useHand, useMeltShown, useOpenPlanes } from './openPlanes.ts';

/** The painted melt of the latest solved fields; nothing until there are any. */
export function MeltInScene({ onPainted }: { onPainted(triangles: number): void }) {
  const shown = useMeltShown();
  const painted = useMelt((state) => state.painted);
  const prediction = useEvaluation((state) => state.solved);
  const old = useEvaluation((state) => state.solvedOld);
  const azimuths = useOpenPlanes();
  const hand = useHand();
  if (!shown || !prediction?.fields) return null;
  return <MeltPaint {...{ prediction, azimuths, hand, painted, old, onPainted }} />;
}
