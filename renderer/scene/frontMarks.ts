/** The places where the granulate softens and melts, while they are shown in the 3D view. */

import { useMemo } from 'react';
import { type MeltMark, meltMarks } from '../plots/meltMarks.ts';
import { useEvaluation } from '../store/evaluation.ts';
import { useScene } from './sceneStore.ts';

const none: readonly MeltMark[] = [];

/** The places in order; empty where they are hidden or nothing melts. */
export function useFrontMarks(): readonly MeltMark[] {
  const shown = useScene((state) => state.front);
  const prediction = useEvaluation((state) => state.prediction);
  return useMemo(() => (shown && prediction ? meltMarks(prediction) : none), [shown, prediction]);
}
