/** The granules of the design that is shown, placed by a worker while they are wanted. */

import { useEffect, useMemo } from 'react';
import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import type { GrainPicture } from '../../core/index.ts';
import type { GrainsAnswer, GrainsAsk } from '../solve/grainsProtocol.ts';
import { useJob } from '../solve/job.ts';
import { startGrainsWorker } from '../solve/startJobs.ts';
import { useEvaluation } from '../store/evaluation.ts';
import { currentProject } from '../store/project.ts';
import { useView } from '../store/view.ts';
import { useScene } from './sceneStore.ts';

/** What is known of the granules. */
export interface PlacedGrains {
  readonly picture: GrainPicture | null;
  readonly state: 'idle' | 'running' | 'done' | 'stopped' | 'fault';
  readonly fault: string | null;
}

const placedStore = createStore<PlacedGrains>(() => ({ picture: null, state: 'idle', fault: null }));

/** The granules as far as they are placed. */
export const usePlacedGrains = (): PlacedGrains => useStore(placedStore);

/** Whether granules are drawn now: a turning screw would run through them. */
export const useGrainsShown = (): boolean => {
  const turning = useView((state) => state.turning);
  return useScene((state) => state.grains) && !turning;
};

/** Asks for the granules of what is shown; in one place of the window. The older ones stay until the new ones are there. */
export function usePlacing(): void {
  const wanted = useScene((state) => state.grains);
  const hash = useEvaluation((state) => state.shape?.designHash ?? null);
  const revisionId = useEvaluation((state) => state.shape?.revisionId ?? null);
  const ask = useMemo<GrainsAsk | null>(() => {
    const project = currentProject();
    return wanted && hash !== null && revisionId !== null && project ? { project, revisionId } : null;
  }, [wanted, hash, revisionId]);
  const { answers, state, fault } = useJob<GrainsAnswer>(startGrainsWorker, ask);
  useEffect(() => {
    const picture = answers.at(-1)?.picture;
    placedStore.setState({ state, fault, ...(picture ? { picture } : {}) });
  }, [answers, state, fault]);
}
