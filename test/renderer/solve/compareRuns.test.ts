import { expect, test } from 'vitest';
import type { WorkerLike } from '../../../renderer/solve/client.ts';
import { type Outcome, runAll } from '../../../renderer/solve/compareRuns.ts';
import type { Answer, Request } from '../../../renderer/solve/protocol.ts';
import { loadExample } from '../../helpers/projects.ts';

/** A worker that refuses every revision with its id as the reason, or breaks at one of them. */
class Refuser implements WorkerLike {
  ended = false;
  onmessage: WorkerLike['onmessage'] = null;
  onerror: WorkerLike['onerror'] = null;
  constructor(private readonly breaksAt: string) {}
  postMessage(message: unknown) {
    const { run, revisionId } = message as Request;
    const issue = { path: [], code: 'no', message: revisionId, remedy: '' };
    const answer: Answer = { kind: 'issues', run, issues: [issue] };
    queueMicrotask(() => {
      if (revisionId === this.breaksAt) this.onerror?.({ message: 'broke' } as ErrorEvent);
      else this.onmessage?.({ data: answer } as MessageEvent<Answer>);
    });
  }
  terminate() {
    this.ended = true;
  }
}

test('every revision gets an outcome in order, one that breaks included, and the worker ends', async () => {
  const worker = new Refuser('B');
  const heard: [string, Outcome][] = [];
  runAll(
    loadExample('demo'),
    ['A', 'B', 'C'],
    (id, outcome) => heard.push([id, outcome]),
    () => worker,
  );
  await new Promise((done) => setTimeout(done, 20));
  expect(heard).toEqual([
    ['A', { refusal: 'A' }],
    ['B', { refusal: 'broke' }],
    ['C', { refusal: 'C' }],
  ]);
  expect(worker.ended).toBe(true);
});
