import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { endAfterMs, SolveClient, type WorkerLike } from '../../../renderer/solve/client.ts';
import type { Answer, Request } from '../../../renderer/solve/protocol.ts';
import { loadExample } from '../../helpers/projects.ts';

class FakeWorker implements WorkerLike {
  readonly asked: Request[] = [];
  ended = false;
  onmessage: WorkerLike['onmessage'] = null;
  onerror: WorkerLike['onerror'] = null;
  postMessage(message: unknown) {
    this.asked.push(message as Request);
  }
  terminate() {
    this.ended = true;
  }
  say(answer: Answer) {
    this.onmessage?.({ data: answer } as MessageEvent<Answer>);
  }
}

const project = loadExample('demo');
const wanted = (revisionId: string) => ({
  project,
  revisionId,
  withShape: true,
  knownShape: null,
  fields: 'formula' as const,
});
let workers: FakeWorker[];
let heard: Answer[];
let client: SolveClient;

beforeEach(() => {
  vi.useFakeTimers();
  workers = [];
  heard = [];
  const start = () => {
    const worker = new FakeWorker();
    workers.push(worker);
    return worker;
  };
  client = new SolveClient(start, (answer) => heard.push(answer));
});
afterEach(() => vi.useRealTimers());

const refused = (run: number): Answer => ({ kind: 'issues', run, issues: [] });

test('of many requests during a run only the latest is begun, in the same worker', () => {
  for (const id of ['A', 'B', 'C']) client.request(wanted(id));
  workers[0]?.say(refused(1));
  expect(workers).toHaveLength(1);
  expect(workers[0]?.asked.map(({ revisionId }) => revisionId)).toEqual(['A', 'C']);
});

test('a run overtaken for long is ended and the latest begun in a new worker', () => {
  client.request(wanted('A'));
  client.request(wanted('B'));
  vi.advanceTimersByTime(endAfterMs + 1);
  expect(workers[0]?.ended).toBe(true);
  expect(workers[1]?.asked.map(({ revisionId }) => revisionId)).toEqual(['B']);
  workers[0]?.say(refused(1));
  expect(heard).toEqual([]);
});

test('a run that nobody overtakes may take as long as it needs', () => {
  client.request(wanted('A'));
  vi.advanceTimersByTime(60_000);
  expect(workers[0]?.ended).toBe(false);
});

test('progress and shape do not end a run', () => {
  client.request(wanted('A'));
  workers[0]?.say({ kind: 'progress', run: 1, done: 0.5, stage: 'half' });
  client.request(wanted('B'));
  expect(workers[0]?.asked).toHaveLength(1);
  workers[0]?.say(refused(1));
  expect(workers[0]?.asked).toHaveLength(2);
});

test('a broken worker is reported and the next request gets a new one', () => {
  client.request(wanted('A'));
  workers[0]?.onerror?.({ message: 'out of memory' } as ErrorEvent);
  expect(heard).toEqual([{ kind: 'fault', run: 1, message: 'out of memory' }]);
  client.request(wanted('A'));
  expect(workers).toHaveLength(2);
  workers[1]?.say(refused(2));
  expect(heard.at(-1)).toEqual(refused(2));
});

test('a run that is given up is not heard, ends after its patience, and makes room at once where that is none', () => {
  const impatient = new SolveClient(
    () => {
      const worker = new FakeWorker();
      workers.push(worker);
      return worker;
    },
    (answer) => heard.push(answer),
    ({ done }) => (done > 0.9 ? 1000 : 0),
  );
  impatient.request(wanted('A'));
  workers[0]?.say({ kind: 'progress', run: 1, done: 0.95, stage: 'nearly' });
  impatient.drop();
  vi.advanceTimersByTime(500);
  expect(workers[0]?.ended).toBe(false);
  workers[0]?.say(refused(1));
  expect(heard.map(({ kind }) => kind)).toEqual(['progress']);
  impatient.request(wanted('B'));
  impatient.drop();
  vi.advanceTimersByTime(1);
  expect(workers[0]?.ended).toBe(true);
});

test('a run that can be given up is told so and its worker kept; one that does not listen is ended', () => {
  const told: number[] = [];
  const start = () => {
    const worker = new FakeWorker();
    workers.push(worker);
    return worker;
  };
  const tell = (run: number) => told.push(run) > 0;
  client = new SolveClient(
    start,
    (answer) => heard.push(answer),
    () => 0,
    tell,
  );
  client.request(wanted('A'));
  client.request(wanted('B'));
  vi.advanceTimersByTime(1);
  expect([told, workers[0]?.ended, workers[0]?.asked.length]).toEqual([[1], false, 1]);
  workers[0]?.say({ kind: 'givenUp', run: 1 });
  expect([heard, workers[0]?.asked.map(({ revisionId }) => revisionId)]).toEqual([[], ['A', 'B']]);
  client.drop();
  vi.advanceTimersByTime(endAfterMs / 2);
  expect([told, workers[0]?.ended]).toEqual([[1, 2], false]);
  vi.advanceTimersByTime(endAfterMs);
  expect(workers[0]?.ended).toBe(true);
});
