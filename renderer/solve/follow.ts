/** Keeps the evaluation in step with the project: every change of it asks for a run, after a short pause. */

import type { Project } from '../../core/index.ts';
import { clearEvaluation, markStale, takeAnswer } from '../store/evaluation.ts';
import { activeRevision, projectStore } from '../store/project.ts';
import { SolveClient, type WorkerLike } from './client.ts';

/** Pause after an edit before a run begins, ms: short enough to feel direct, long enough to swallow held-down keys. */
export const pauseMs = 60;

/** The parts of a project on which a prediction depends, compared by identity. */
const concerns = (project: Project) => {
  const { locked: _l, note: _n, name: _m, ...described } = activeRevision(project);
  return [...Object.values(described), project.materials, project.process, project.print];
};

/** Starts following; answers with the function that stops it. */
export function followProject(startWorker: () => WorkerLike): () => void {
  const client = new SolveClient(startWorker, takeAnswer);
  let timer: ReturnType<typeof setTimeout> | null = null;
  const ask = () => {
    const project = projectStore.getState().history?.present;
    if (project) client.request({ project, revisionId: activeRevision(project).id, withShape: true });
  };
  const schedule = () => {
    markStale();
    if (timer) clearTimeout(timer);
    timer = setTimeout(ask, pauseMs);
  };
  askAgain = schedule;
  const stop = projectStore.subscribe((state, before) => {
    const [now, then] = [state.history?.present, before.history?.present];
    if (!now || now === then) return;
    if (state.file !== before.file && state.saved === now && state.history?.past.length === 0) clearEvaluation();
    const old = then ? concerns(then) : [];
    if (concerns(now).some((part, index) => part !== old[index])) schedule();
  });
  if (projectStore.getState().history) schedule();
  return () => {
    stop();
    client.close();
    if (timer) clearTimeout(timer);
  };
}

let askAgain: (() => void) | null = null;

/** Asks again for what is open now, as after a fault; does nothing before followProject began. */
export const retryRun = (): void => askAgain?.();

/** The real worker, bundled beside the window. */
export const startSolveWorker = (): WorkerLike =>
  new Worker(new URL('./worker.ts', import.meta.url), { type: 'module', name: 'predict' });
