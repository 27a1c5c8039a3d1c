import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { Prediction, Presentation } from '../../../core/index.ts';
import type { WorkerLike } from '../../../renderer/solve/client.ts';
import { fieldsPauseMs, followProject, pauseMs, solveFields, stopFields } from '../../../renderer/solve/follow.ts';
import type { Answer, Request } from '../../../renderer/solve/protocol.ts';
import { setValue } from '../../../renderer/store/edits.ts';
import { evaluationStore } from '../../../renderer/store/evaluation.ts';
import { applyEdit, loadProject } from '../../../renderer/store/project.ts';
import { loadExample } from '../../helpers/projects.ts';

interface Started extends WorkerLike {
  readonly asked: Request[];
  ended: boolean;
}

let workers: Started[];
let stop: () => void;

function startWorker(): WorkerLike {
  const asked: Request[] = [];
  const started: Started = {
    asked,
    ended: false,
    onmessage: null,
    onerror: null,
    postMessage: (message) => asked.push(message as Request),
    terminate: () => {
      started.ended = true;
    },
  };
  workers.push(started);
  return started;
}

/** An answer with the little of a prediction that the stores look at. */
function prediction(run: number, fields: 'formula' | 'solved', volumeFlow = 1e-8): Answer {
  const made = { output: { volumeFlow }, options: { fields }, fields: null } as unknown as Prediction;
  return { kind: 'prediction', run, prediction: made, presentation: {} as Presentation, tookMs: 5 };
}

const say = (worker: Started | undefined, answer: (run: number) => Answer) =>
  worker?.onmessage?.({ data: answer(worker.asked.at(-1)?.run ?? 0) } as MessageEvent<Answer>);
const speed = (rpm: number) => applyEdit(setValue(['process', 'screwSpeedRpm'], rpm), { label: 'Screw speed' });
const state = () => evaluationStore.getState();

beforeEach(() => {
  vi.useFakeTimers();
  workers = [];
  stop = followProject(startWorker);
  loadProject(loadExample('demo'), { handle: null, name: 'demo.json' });
  vi.advanceTimersByTime(pauseMs);
});
afterEach(() => {
  stop();
  vi.useRealTimers();
});

function estimate(volumeFlow?: number): void {
  say(workers[0], (run) => prediction(run, 'formula', volumeFlow));
}

test('an estimate is shown, then a second worker solves the fields, whose answer replaces it', () => {
  estimate();
  expect(state().prediction?.options.fields).toBe('formula');
  expect(state().solving).toBe(true);
  expect(workers).toHaveLength(1);
  vi.advanceTimersByTime(fieldsPauseMs);
  expect(workers[1]?.asked.map(({ fields, withShape }) => [fields, withShape])).toEqual([['solved', false]]);
  say(workers[1], (run) => ({ kind: 'progress', run, done: 0.4, stage: 'channel field' }));
  expect(state().solveProgress?.done).toBe(0.4);
  say(workers[1], (run) => prediction(run, 'solved'));
  expect(state()).toMatchObject({ solving: false, solvedOld: false });
  expect(state().prediction).toBe(state().solved);
});

test('an edit while fields are solved gets its estimate at once; the older fields stay, marked as old', () => {
  estimate();
  vi.advanceTimersByTime(fieldsPauseMs);
  say(workers[1], (run) => prediction(run, 'solved'));
  const { solved } = state();
  speed(20);
  vi.advanceTimersByTime(pauseMs);
  estimate();
  vi.advanceTimersByTime(fieldsPauseMs);
  speed(21);
  vi.advanceTimersByTime(pauseMs);
  expect(workers[0]?.asked.map(({ project }) => project.process.screwSpeedRpm).slice(-2)).toEqual([20, 21]);
  expect(state()).toMatchObject({ solved, solvedOld: true });
  say(workers[1], (run) => prediction(run, 'solved'));
  expect(state().solved).toBe(solved);
});

test('edits that follow each other closely solve nothing in between', () => {
  for (const rpm of [20, 21, 22]) {
    speed(rpm);
    vi.advanceTimersByTime(pauseMs);
    estimate();
    vi.advanceTimersByTime(fieldsPauseMs / 2);
  }
  expect(workers).toHaveLength(1);
  vi.advanceTimersByTime(fieldsPauseMs);
  expect(workers[1]?.asked).toHaveLength(1);
});

test('solving can be stopped and begun again; where nothing flows it never begins', () => {
  estimate();
  stopFields();
  vi.advanceTimersByTime(10 * fieldsPauseMs);
  expect(workers).toHaveLength(1);
  expect(state().solving).toBe(false);
  solveFields();
  vi.advanceTimersByTime(fieldsPauseMs);
  expect(workers[1]?.asked).toHaveLength(1);
  speed(23);
  vi.advanceTimersByTime(pauseMs);
  estimate(0);
  vi.advanceTimersByTime(10 * fieldsPauseMs);
  expect(workers[1]?.asked).toHaveLength(1);
  expect(state()).toMatchObject({ solving: false, solved: null });
});

test('fields under way stand still from an edit until its estimate, whatever that says', () => {
  estimate();
  vi.advanceTimersByTime(fieldsPauseMs);
  const shared = workers[1]?.asked[0]?.hold;
  if (!shared) throw new Error('no hold was handed over');
  const held = () => new Int32Array(shared)[0];
  expect(held()).toBe(0);
  const speeds = [31, 32];
  for (const end of [() => estimate(), () => say(workers[0], (run) => ({ kind: 'issues', run, issues: [] }))]) {
    speed(speeds.shift() ?? 0);
    expect(held()).toBe(1);
    vi.advanceTimersByTime(pauseMs);
    say(workers[0], (run) => ({ kind: 'progress', run, done: 0.5, stage: 'working point' }));
    expect(held()).toBe(1);
    end();
    expect(held()).toBe(0);
  }
});
