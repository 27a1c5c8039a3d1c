import { expect, test } from 'vitest';
import type { WorkerLike } from '../../../renderer/solve/client.ts';
import { type CompareTask, runTasks } from '../../../renderer/solve/compareRuns.ts';
import type { Answer, Request } from '../../../renderer/solve/protocol.ts';
import { loadExample } from '../../helpers/projects.ts';

/** A worker that tells progress and then refuses every revision with its id as the reason, or breaks at one of them. */
class Refuser implements WorkerLike {
  ended = false;
  onmessage: WorkerLike['onmessage'] = null;
  onerror: WorkerLike['onerror'] = null;
  constructor(private readonly breaksAt: string) {}
  postMessage(message: unknown) {
    const { run, revisionId } = message as Request;
    const issue = { path: [], code: 'no', message: revisionId, remedy: '' };
    const say = (answer: Answer) => this.onmessage?.({ data: answer } as MessageEvent<Answer>);
    queueMicrotask(() => {
      if (this.ended) return;
      if (revisionId === this.breaksAt) this.onerror?.({ message: 'broke' } as ErrorEvent);
      else {
        say({ kind: 'progress', run, done: 0.5, stage: 'flow' });
        say({ kind: 'issues', run, issues: [issue] });
      }
    });
  }
  terminate() {
    this.ended = true;
  }
}

const tasks = (...ids: string[]): CompareTask[] =>
  ids.map((revisionId) => ({ revisionId, fields: 'formula', withShape: true }));
const soon = () => new Promise((done) => setTimeout(done, 20));

function run(list: readonly CompareTask[], breaksAt = '', skips?: (task: CompareTask) => boolean) {
  const workers: Refuser[] = [];
  const heard: string[] = [];
  let over = 0;
  const end = runTasks(
    loadExample('demo'),
    list,
    ({ revisionId }, answer) => heard.push(`${revisionId} ${answer.kind}`),
    () => over++,
    skips,
    () => {
      const worker = new Refuser(breaksAt);
      workers.push(worker);
      return worker;
    },
  );
  return { heard, workers, end, over: () => over };
}

test('every revision is heard in order, one that breaks included, and every worker ends', async () => {
  const { heard, workers, over } = run(tasks('A', 'B', 'C'), 'B');
  await soon();
  expect(heard).toEqual(['A progress', 'A issues', 'B fault', 'C progress', 'C issues']);
  expect(workers.map(({ ended }) => ended)).toEqual([true, true]);
  expect(over()).toBe(1);
});

test('a task with nothing left to find is left out when its turn comes', async () => {
  const { heard, over } = run(tasks('A', 'B'), '', ({ revisionId }) => revisionId === 'A');
  await soon();
  expect(heard).toEqual(['B progress', 'B issues']);
  expect(over()).toBe(1);
});

test('a stopped run says nothing more', async () => {
  const { heard, workers, end, over } = run(tasks('A', 'B'));
  end();
  await soon();
  expect(heard).toEqual([]);
  expect(workers[0]?.ended).toBe(true);
  expect(over()).toBe(0);
});
