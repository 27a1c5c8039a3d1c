/**
 * Keeps the evaluation in step with the project: every change of it asks for an estimate after a short pause, and when
 * that is there and no further change comes, for solved fields. Each has a worker of its own, so that an estimate never
 * waits for fields.
 */

import type { Project } from '../../core/index.ts';
import { clearEvaluation, markSolving, markStale, stopSolving, takeAnswer, takeSolved } from '../store/evaluation.ts';
import { activeRevision, projectStore } from '../store/project.ts';
import { SolveClient, type WorkerLike } from './client.ts';
import { fieldsPatience } from './patience.ts';
import type { Answer } from './protocol.ts';

/** Pause after an edit before a run begins, ms: short enough to feel direct, long enough to swallow held-down keys. */
export const pauseMs = 60;

/** Pause after an estimate before fields are solved, ms: while edits follow each other, none are. */
export const fieldsPauseMs = 300;

/** The parts of a project on which a prediction depends, compared by identity. */
const concerns = (project: Project) => {
  const { locked: _l, note: _n, name: _m, ...described } = activeRevision(project);
  return [...Object.values(described), project.materials, project.process, project.print];
};

/** Asks for solved fields after an estimate that has a flow. */
function fieldsAfter(startWorker: () => WorkerLike) {
  const client = new SolveClient(startWorker, takeSolved, fieldsPatience);
  let timer: ReturnType<typeof setTimeout> | null = null;
  const drop = () => {
    if (timer) clearTimeout(timer);
    timer = null;
    client.drop();
  };
  const ask = () => {
    drop();
    const project = projectStore.getState().history?.present;
    if (!project) return;
    markSolving();
    const request = () =>
      client.request({ project, revisionId: activeRevision(project).id, withShape: false, fields: 'solved' });
    timer = setTimeout(request, fieldsPauseMs);
  };
  const close = () => {
    drop();
    client.close();
  };
  return { ask, drop, close };
}

/** Starts following; answers with the function that stops it. */
export function followProject(startWorker: () => WorkerLike): () => void {
  const fields = fieldsAfter(startWorker);
  const hear = (answer: Answer) => {
    takeAnswer(answer);
    if (answer.kind === 'prediction' && answer.prediction.output.volumeFlow > 0) fields.ask();
  };
  const client = new SolveClient(startWorker, hear);
  let timer: ReturnType<typeof setTimeout> | null = null;
  const ask = () => {
    const project = projectStore.getState().history?.present;
    if (project)
      client.request({ project, revisionId: activeRevision(project).id, withShape: true, fields: 'formula' });
  };
  const schedule = () => {
    markStale();
    fields.drop();
    if (timer) clearTimeout(timer);
    timer = setTimeout(ask, pauseMs);
  };
  running = { askAgain: schedule, ...fields };
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
    fields.close();
    if (timer) clearTimeout(timer);
  };
}

let running: { askAgain(): void; ask(): void; drop(): void } | null = null;

/** Asks again for what is open now, as after a fault; does nothing before followProject began. */
export const retryRun = (): void => running?.askAgain();

/** Gives up solving the fields; the estimate stays. */
export function stopFields(): void {
  running?.drop();
  stopSolving();
}

/** Solves the fields of what is open now. */
export const solveFields = (): void => running?.ask();

/** The real worker, bundled beside the window. */
export const startSolveWorker = (): WorkerLike =>
  new Worker(new URL('./worker.ts', import.meta.url), { type: 'module', name: 'predict' });
