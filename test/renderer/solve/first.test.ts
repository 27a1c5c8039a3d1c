import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { Prediction, Presentation } from '../../../core/index.ts';
import { validateDesign } from '../../../core/index.ts';
import type { WorkerLike } from '../../../renderer/solve/client.ts';
import { followProject, longestPauseMs, pauseMs, warmingPauseMs, warmingRuns } from '../../../renderer/solve/follow.ts';
import type { Answer, Request, Shape } from '../../../renderer/solve/protocol.ts';
import { shapeKey } from '../../../renderer/solve/shape.ts';
import { setValue } from '../../../renderer/store/edits.ts';
import { clearEvaluation, evaluationStore, takeAnswer } from '../../../renderer/store/evaluation.ts';
import { applyEdit, loadProject } from '../../../renderer/store/project.ts';
import { loadExample } from '../../helpers/projects.ts';

interface Started extends WorkerLike {
  readonly asked: Request[];
}

let estimates: Started;
let firsts: Started;
let stop: () => void;

function started(): Started {
  const asked: Request[] = [];
  return { asked, onmessage: null, onerror: null, postMessage: (m) => asked.push(m as Request), terminate: () => {} };
}

const say = (worker: Started, answer: (run: number) => Answer) =>
  worker.onmessage?.({ data: answer(worker.asked.at(-1)?.run ?? 0) } as MessageEvent<Answer>);
const made = (volumeFlow: number) => ({ output: { volumeFlow }, options: { fields: 'formula' } }) as Prediction;
const estimate = (volumeFlow: number) =>
  say(estimates, (run) => ({
    ...{ kind: 'prediction', run, tookMs: 5 },
    ...{ prediction: made(volumeFlow), presentation: {} as Presentation },
  }));
const first = (volumeFlow: number) => say(firsts, (run) => ({ kind: 'first', run, figures: made(volumeFlow) }));
/** An edit; what the worker of first figures has under way, to be warm, ends before it. */
function speed(rpm: number): void {
  applyEdit(setValue(['process', 'screwSpeedRpm'], rpm), { label: 'Screw speed' });
  const asked = firsts.asked.at(-1);
  if (asked && asked.project.process.screwSpeedRpm !== rpm) say(firsts, (run) => ({ kind: 'fault', run, message: '' }));
}
const state = () => evaluationStore.getState();

beforeEach(() => {
  vi.useFakeTimers();
  clearEvaluation();
  estimates = started();
  firsts = started();
  stop = followProject(
    () => estimates,
    () => firsts,
  );
  loadProject(loadExample('demo'), { handle: null, name: 'demo.json' });
  vi.advanceTimersByTime(pauseMs);
  expect(firsts.asked).toHaveLength(0);
  estimate(0);
});
afterEach(() => {
  stop();
  vi.useRealTimers();
});

test('first figures are asked for at once, stand in until the estimate, and go with it', () => {
  speed(11);
  expect(firsts.asked.at(-1)).toMatchObject({ fields: 'first', project: { process: { screwSpeedRpm: 11 } } });
  first(2);
  expect([state().first?.output.volumeFlow, state().prediction?.output.volumeFlow, state().stale]).toEqual([
    2,
    0,
    true,
  ]);
  vi.advanceTimersByTime(pauseMs);
  estimate(3);
  expect([state().first, state().prediction?.output.volumeFlow, state().stale]).toEqual([null, 3, false]);
});

test('the estimate is asked for when first figures are there, or after a pause without them', () => {
  const before = estimates.asked.length;
  speed(21);
  expect(estimates.asked).toHaveLength(before);
  first(2);
  expect(estimates.asked).toHaveLength(before + 1);
  estimate(3);
  speed(22);
  vi.advanceTimersByTime(longestPauseMs - 1);
  expect(estimates.asked).toHaveLength(before + 1);
  vi.advanceTimersByTime(1);
  expect(estimates.asked).toHaveLength(before + 2);
  first(2);
  expect(estimates.asked).toHaveLength(before + 2);
});

test('a new worker is warmed by runs that change nothing, while nothing is edited', () => {
  const before = state();
  for (let i = 0; i < warmingRuns + 5; i++) {
    vi.advanceTimersByTime(warmingPauseMs);
    first(i);
  }
  expect(firsts.asked).toHaveLength(warmingRuns);
  expect(state()).toBe(before);
});

test('first figures that come after the estimate are not shown', () => {
  speed(12);
  vi.advanceTimersByTime(longestPauseMs);
  estimate(3);
  first(2);
  expect(state().first).toBeNull();
});

test('a refused design takes the first figures of the one before away', () => {
  speed(13);
  first(2);
  speed(14);
  vi.advanceTimersByTime(longestPauseMs);
  say(estimates, (run) => ({ kind: 'issues', run, issues: [] }));
  expect(state().first).toBeNull();
});

test('a shape that is known is not asked for again, and passes to the design as it is now', () => {
  takeAnswer({ kind: 'shape', run: 1, shape: { key: 'k', designHash: 'old' } as Shape });
  speed(15);
  vi.advanceTimersByTime(longestPauseMs);
  expect(estimates.asked.at(-1)?.knownShape).toBe('k');
  say(estimates, (run) => ({ kind: 'sameShape', run, designHash: 'new' }));
  expect(state().shape).toEqual({ key: 'k', designHash: 'new' });
});

test('speeds and temperatures leave the key of a shape, lengths and diameters do not', () => {
  const project = loadExample('demo');
  const keyAfter = (path: readonly (string | number)[], value: number) => {
    const design = validateDesign(setValue(path, value)(project), 'C');
    if (!design.ok) throw new Error(JSON.stringify(design.issues));
    return shapeKey(design.value);
  };
  const at = project.revisions.findIndex(({ id }) => id === 'C');
  const key = keyAfter(['process', 'screwSpeedRpm'], 10);
  expect(keyAfter(['process', 'screwSpeedRpm'], 20)).toBe(key);
  expect(keyAfter(['revisions', at, 'nozzle', 'setTempC'], 190)).toBe(key);
  expect(keyAfter(['revisions', at, 'screw', 'sections', 2, 'rootDiameterEndMm'], 10.35)).not.toBe(key);
  expect(keyAfter(['revisions', at, 'barrel', 'outerDiameterMm'], 31)).not.toBe(key);
});
