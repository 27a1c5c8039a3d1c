import { afterEach, beforeEach, expect, test } from 'vitest';
import demoText from '../../../assets/examples/demo.json?raw';
import { parseProject } from '../../../core/index.ts';
import {
  type BenchWorker,
  cancelRun,
  dropRuns,
  isOld,
  predictRows,
  runStore,
  setBenchWorker,
} from '../../../renderer/bench/runs.ts';
import type { BenchAnswer, BenchRequest } from '../../../renderer/bench/solve/protocol.ts';
import { perform } from '../../../renderer/bench/solve/tasks.ts';
import { changeTrial } from '../../../renderer/bench/trials.ts';
import { currentProject, loadProject } from '../../../renderer/store/project.ts';

class FakeWorker implements BenchWorker {
  asked: BenchRequest | null = null;
  ended = false;
  onmessage: BenchWorker['onmessage'] = null;
  onerror: BenchWorker['onerror'] = null;
  postMessage(message: BenchRequest): void {
    this.asked = message;
  }
  terminate(): void {
    this.ended = true;
  }
  say(data: BenchAnswer): void {
    this.onmessage?.({ data } as MessageEvent<BenchAnswer>);
  }
}

let workers: FakeWorker[] = [];
const latest = () => workers.at(-1) as FakeWorker;

beforeEach(() => {
  const read = parseProject(demoText);
  if (!read.ok) throw new Error('the demo is a good project');
  loadProject({ ...read.value, benchLog: read.value.benchLog.slice(0, 2) }, { handle: null, name: 'demo.json' });
  workers = [];
  setBenchWorker(() => {
    const worker = new FakeWorker();
    workers.push(worker);
    return worker;
  });
});

afterEach(dropRuns);

test('progress is told, cancelling ends the worker, and what it says afterwards is not heard', () => {
  predictRows();
  latest().say({ kind: 'progress', done: 1, of: 2 });
  expect(runStore.getState().states.rows).toMatchObject({ running: true, done: 1, of: 2 });
  cancelRun('rows');
  expect(latest().ended).toBe(true);
  latest().say({ kind: 'rows', rows: [], predictions: {} });
  expect(runStore.getState()).toMatchObject({ rows: null, states: { rows: { running: false } } });
});

test('a fault is kept in words', () => {
  predictRows();
  latest().say({ kind: 'fault', message: 'RangeError: no' });
  expect(runStore.getState().states.rows).toMatchObject({ running: false, fault: 'RangeError: no' });
});

test('trials are predicted once: after a change only the changed one is', () => {
  predictRows();
  const request = latest().asked as BenchRequest;
  const told: number[] = [];
  latest().say(perform(request, (done) => told.push(done)));
  expect(told).toEqual([1, 2]);
  const { rows } = runStore.getState();
  expect(rows?.rows.map(({ trialId, predicted }) => [trialId, Number(predicted) > 0])).toEqual([
    ['T1', true],
    ['T2', true],
  ]);
  const project = currentProject();
  if (!project || !rows) throw new Error('a project is open');
  expect(isOld(rows.from, project)).toBe(false);
  changeTrial('T2', { ...(project.benchLog[1] as (typeof project.benchLog)[1]), grams: 1 });
  expect(isOld(rows.from, currentProject() ?? project)).toBe(true);
  predictRows();
  expect(latest().asked).toMatchObject({ kind: 'rows' });
  expect(Object.keys((latest().asked as Extract<BenchRequest, { kind: 'rows' }>).known)).toEqual(['T1']);
});

test('the worker’s task uses colours only where their rate is looked for', () => {
  const project = currentProject();
  if (!project) throw new Error('a project is open');
  const outcome = perform({ kind: 'fit', project, trialIds: ['T1'], factors: [] }, () => undefined);
  expect(outcome.kind === 'fit' && outcome.fit.observations.map(({ kind }) => kind)).toEqual(['rate', 'torque']);
});
