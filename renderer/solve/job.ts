/** One long calculation in a worker of its own: asked once, heard as it goes, ended at any time. */

import { useEffect, useState } from 'react';

/** The part of Worker that is used, so that tests can stand in for it. */
export interface JobWorker {
  postMessage(message: unknown): void;
  terminate(): void;
  onmessage: ((event: MessageEvent) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}

/** What every job may answer besides its own words; both end it. */
export type JobEnd = { readonly kind: 'done' } | { readonly kind: 'fault'; readonly message: string };

/** Asks a new worker; `hear` gets every answer. The worker ends with its last answer, or with the returned function. */
function runJob<Answer extends { readonly kind: string }>(
  startWorker: () => JobWorker,
  ask: unknown,
  hear: (answer: Answer | JobEnd) => void,
): () => void {
  const worker = startWorker();
  worker.onmessage = (event: MessageEvent<Answer | JobEnd>) => {
    if (event.data.kind === 'done' || event.data.kind === 'fault') worker.terminate();
    hear(event.data);
  };
  worker.onerror = (event) => {
    worker.terminate();
    hear({ kind: 'fault', message: event.message || 'the calculation stopped without saying why' });
  };
  worker.postMessage(ask);
  return () => worker.terminate();
}

/** What has been heard of a job. */
export interface Heard<Answer> {
  readonly answers: readonly Answer[];
  readonly state: 'idle' | 'running' | 'done' | 'stopped' | 'fault';
  readonly fault: string | null;
}

const nothing = { answers: [], state: 'idle', fault: null } as const;

function heardMore<Answer extends { readonly kind: string }>(
  before: Heard<Answer>,
  answer: Answer | JobEnd,
): Heard<Answer> {
  if (answer.kind === 'done') return { ...before, state: 'done' };
  if (answer.kind === 'fault') return { ...before, state: 'fault', fault: 'message' in answer ? answer.message : '' };
  return { ...before, answers: [...before.answers, answer as Answer] };
}

/**
 * Runs a job while the view is there, anew for every new `ask` (by identity; null = none).
 * @returns all it has heard, and the function that stops it; what was heard stays
 */
export function useJob<Answer extends { readonly kind: string }>(
  startWorker: () => JobWorker,
  ask: unknown,
): Heard<Answer> & { stop(): void } {
  const [heard, setHeard] = useState<Heard<Answer>>(nothing);
  const [end, setEnd] = useState<{ run: () => void } | null>(null);
  useEffect(() => {
    if (ask === null) {
      setHeard(nothing);
      return;
    }
    setHeard({ ...nothing, state: 'running' });
    const run = runJob<Answer>(startWorker, ask, (answer) => setHeard((before) => heardMore(before, answer)));
    setEnd({ run });
    return run;
  }, [startWorker, ask]);
  const stop = () => {
    end?.run();
    setHeard((before) => (before.state === 'running' ? { ...before, state: 'stopped' } : before));
  };
  return { ...heard, stop };
}
