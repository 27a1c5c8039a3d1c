/**
 * Keeps the evaluation in step with the project: every change of it asks at once for first figures, after a short pause
 * for an estimate, and when that is there and no further change comes, for solved fields. Each has a worker of its own,
 * so that the quicker never waits for the slower.
 */

import type { Project } from '../../core/index.ts';
import {
  clearEvaluation,
  evaluationStore,
  markSolving,
  markStale,
  stopSolving,
  takeAnswer,
  takeFirst,
  takeSolved,
} from '../store/evaluation.ts';
import { activeRevision, projectStore } from '../store/project.ts';
import { SolveClient, type WorkerLike } from './client.ts';
import { createHold } from './hold.ts';
import { heldPatience } from './patience.ts';
import { type Answer, endsRun } from './protocol.ts';

/** Pause after an edit before a run begins, ms: short enough to feel direct, long enough to swallow held-down keys. */
export const pauseMs = 60;

/** Longest that an estimate waits for first figures, which would share a core with it, ms. */
export const longestPauseMs = 250;

/** Pause after an estimate before fields are solved, ms: while edits follow each other, none are. */
export const fieldsPauseMs = 300;

/** The parts of a project on which a prediction depends, compared by identity. */
const concerns = (project: Project) => {
  const { locked: _l, note: _n, name: _m, ...described } = activeRevision(project);
  const material = project.materials.find(({ id }) => id === described.materialId);
  return [...Object.values(described), material, project.process, project.print];
};

/** What every request says of the project. */
const asked = (project: Project) => ({ project, revisionId: activeRevision(project).id, knownShape: null });

/** Asks for solved fields after an estimate that has a flow. */
function fieldsAfter(startWorker: () => WorkerLike) {
  const hold = createHold();
  const client = new SolveClient(startWorker, takeSolved, heldPatience(hold), hold.giveUp);
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
    const request = () => {
      hold.restart();
      client.request({ ...asked(project), withShape: false, fields: 'solved', hold: hold.shared });
    };
    timer = setTimeout(request, fieldsPauseMs);
  };
  const close = () => {
    drop();
    hold.end();
    client.close();
  };
  return { ask, drop, close, hold };
}

/** Runs that a new worker takes to be quick: before, the engine has not compiled what they use most. */
export const warmingRuns = 30;

/** Pause between two of them, ms: the window has other work when it opens. */
export const warmingPauseMs = 100;

/**
 * Asks for first figures wherever there are older ones to stand in for: what opens waits for its estimate. Once that is
 * there, the worker is warmed by runs that nobody hears, so that the first edit is answered as quickly as the tenth.
 */
function firstFigures(startWorker: (() => WorkerLike) | null, there: () => void) {
  let toWarm = warmingRuns;
  const hear = (answer: Answer) => {
    takeFirst(answer);
    if (!evaluationStore.getState().stale) warmLater();
    else if (answer.kind === 'first') there();
  };
  const client = startWorker && new SolveClient(startWorker, hear);
  const request = (project: Project) => client?.request({ ...asked(project), withShape: false, fields: 'first' });
  const warm = () => {
    const project = projectStore.getState().history?.present;
    if (toWarm === 0 || !project) return;
    toWarm--;
    request(project);
  };
  let pause: ReturnType<typeof setTimeout> | null = null;
  const warmLater = () => {
    if (pause) clearTimeout(pause);
    pause = setTimeout(() => {
      if (!evaluationStore.getState().stale) warm();
    }, warmingPauseMs);
  };
  return {
    /** Whether there will be any. */
    ask: (project: Project): boolean => {
      if (!client || !evaluationStore.getState().prediction) return false;
      request(project);
      return true;
    },
    /** The estimate is there: what is still asked for is asked too late. */
    settle: () => {
      client?.drop();
      warmLater();
    },
    close: () => {
      if (pause) clearTimeout(pause);
      client?.close();
    },
  };
}

/**
 * Starts following; answers with the function that stops it.
 * @param startFirst starts the worker of first figures; null for none
 */
export function followProject(startWorker: () => WorkerLike, startFirst: (() => WorkerLike) | null = null): () => void {
  const first = firstFigures(startFirst, () => {
    if (timer) ask();
  });
  const fields = fieldsAfter(startWorker);
  const hear = (answer: Answer) => {
    takeAnswer(answer);
    if (endsRun(answer)) fields.hold.end();
    if (answer.kind === 'prediction') first.settle();
    if (answer.kind === 'prediction' && answer.prediction.output.volumeFlow > 0) fields.ask();
  };
  const client = new SolveClient(startWorker, hear);
  let timer: ReturnType<typeof setTimeout> | null = null;
  const ask = () => {
    if (timer) clearTimeout(timer);
    timer = null;
    const project = projectStore.getState().history?.present;
    const knownShape = evaluationStore.getState().shape?.key ?? null;
    if (project) client.request({ ...asked(project), withShape: true, knownShape, fields: 'formula' });
  };
  const schedule = () => {
    markStale();
    fields.hold.begin();
    fields.drop();
    const project = projectStore.getState().history?.present;
    const awaited = project !== undefined && first.ask(project);
    if (timer) clearTimeout(timer);
    timer = setTimeout(ask, awaited ? longestPauseMs : pauseMs);
  };
  running = { askAgain: schedule, ask: fields.ask, drop: fields.drop };
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
    first.close();
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
