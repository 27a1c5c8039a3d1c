/** A study of doubt under way, as a view sees it. */

import { useEffect, useRef, useState } from 'react';
import type { DoubtSummary, Project } from '../../core/index.ts';
import { runStudy, type StudyNews } from '../solve/doubtPool.ts';
import type { JobWorker } from '../solve/job.ts';

/** How far it is and what it has found. */
export interface Study {
  readonly state: 'idle' | 'running' | 'done' | 'stopped' | 'fault';
  /** samples done, of how many */
  readonly done: number;
  readonly samples: number;
  readonly summary: DoubtSummary | null;
  readonly fault: string | null;
  /** what it was drawn from, so that a change can be told */
  readonly drawn: { readonly project: Project; readonly revisionId: string } | null;
}

const nothing: Study = { state: 'idle', done: 0, samples: 0, summary: null, fault: null, drawn: null };

function afterNews(before: Study, news: StudyNews): Study {
  switch (news.kind) {
    case 'progress':
      return { ...before, done: news.done };
    case 'summary':
      return { ...before, summary: news.summary };
    case 'done':
      return { ...before, state: 'done' };
    case 'fault':
      return { ...before, state: 'fault', fault: news.message };
  }
}

/** Two where the machine has cores to spare beside the window and its own predictions, else one. */
const workerCount = (): number => ((globalThis.navigator?.hardwareConcurrency ?? 1) > 3 ? 2 : 1);

/** The study and its acts; it ends when the view goes. */
export function useStudy(startWorker: () => JobWorker) {
  const [study, setStudy] = useState<Study>(nothing);
  const end = useRef<(() => void) | null>(null);
  useEffect(() => () => end.current?.(), []);
  const start = (project: Project, revisionId: string, samples: number, seed: number) => {
    end.current?.();
    setStudy({ ...nothing, state: 'running', samples, drawn: { project, revisionId } });
    end.current = runStudy(startWorker, workerCount(), { project, revisionId, samples, seed }, (news) =>
      setStudy((before) => afterNews(before, news)),
    );
  };
  const stop = () => {
    end.current?.();
    setStudy((before) => (before.state === 'running' ? { ...before, state: 'stopped' } : before));
  };
  return { study, start, stop };
}
