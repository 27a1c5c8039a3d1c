/** Predictions of several revisions, one after the other in a worker of their own. */

import { useEffect, useState } from 'react';
import type { Prediction, Project } from '../../core/index.ts';
import type { WorkerLike } from './client.ts';
import { startSolveWorker } from './follow.ts';
import type { Answer } from './protocol.ts';

/** A prediction, or why there is none. */
export type Outcome = { readonly prediction: Prediction } | { readonly refusal: string };

/** The outcome an answer means; null where the run goes on. */
function outcomeOf(answer: Answer): Outcome | null {
  if (answer.kind === 'prediction') return { prediction: answer.prediction };
  if (answer.kind === 'issues') return { refusal: answer.issues.map((issue) => issue.message).join(' ') };
  return answer.kind === 'fault' ? { refusal: answer.message } : null;
}

/** Runs the revisions in order; answers with the function that stops it. */
export function runAll(
  project: Project,
  ids: readonly string[],
  hear: (id: string, outcome: Outcome) => void,
  startWorker: () => WorkerLike = startSolveWorker,
): () => void {
  const worker = startWorker();
  let run = 0;
  const next = () => {
    const revisionId = ids[run];
    run++;
    if (revisionId === undefined) worker.terminate();
    else worker.postMessage({ run, project, revisionId, withShape: false, fields: 'solved' });
  };
  const take = (outcome: Outcome | null) => {
    const id = ids[run - 1];
    if (!outcome || id === undefined) return;
    hear(id, outcome);
    next();
  };
  worker.onmessage = (event) => take(outcomeOf(event.data));
  worker.onerror = (event) => take({ refusal: event.message });
  next();
  return () => worker.terminate();
}

/** Outcomes of the revisions so far, by id. */
export function useOutcomes(project: Project, ids: readonly string[]): Readonly<Record<string, Outcome>> {
  const [outcomes, setOutcomes] = useState<Readonly<Record<string, Outcome>>>({});
  const list = ids.join('\n');
  useEffect(() => {
    setOutcomes({});
    const chosen = list === '' ? [] : list.split('\n');
    return runAll(project, chosen, (id, outcome) => setOutcomes((before) => ({ ...before, [id]: outcome })));
  }, [project, list]);
  return outcomes;
}
