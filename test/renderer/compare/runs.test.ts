import { beforeEach, expect, test } from 'vitest';
import { predict, present, validateDesign } from '../../../core/index.ts';
import {
  comparable,
  type Found,
  findMissing,
  goOnRuns,
  mostKept,
  runKey,
  runStore,
  takeFound,
} from '../../../renderer/compare/runs.ts';
import { baseOf, chosenIds } from '../../../renderer/compare/store.ts';
import type { WorkerLike } from '../../../renderer/solve/client.ts';
import type { Answer, Request } from '../../../renderer/solve/protocol.ts';
import { changedDemo, loadExample } from '../../helpers/projects.ts';

const demo = loadExample('demo');
const design = validateDesign(demo, 'C');
if (!design.ok) throw new Error('the demo is refused');
const prediction = predict(design.value, { curvePoints: 0 });
const presentation = present(prediction, design.value);

/** A worker that answers everything at once with the same invented shape and the demo's prediction. */
function quickWorker(asked: string[]): WorkerLike {
  const worker: WorkerLike = {
    onmessage: null,
    onerror: null,
    terminate: () => undefined,
    postMessage: (message) => {
      const { run, revisionId, fields, withShape } = message as Request;
      asked.push(`${revisionId} ${fields}`);
      const say = (answer: Answer) => worker.onmessage?.({ data: answer } as MessageEvent<Answer>);
      queueMicrotask(() => {
        if (withShape) say({ kind: 'shape', run, shape: { revisionId } as never });
        say({ kind: 'prediction', run, prediction, presentation, tookMs: 1 });
      });
    },
  };
  return worker;
}

const soon = () => new Promise((done) => setTimeout(done, 10));

beforeEach(() => runStore.setState({ found: {}, now: null, running: false, stopped: false }));

test('estimates of all come before fields of any, and opening again asks for nothing', async () => {
  const asked: string[] = [];
  findMissing(demo, ['A', 'C'], () => quickWorker(asked));
  expect(runStore.getState().running).toBe(true);
  await soon();
  expect(asked).toEqual(['A formula', 'C formula', 'A solved', 'C solved']);
  expect(runStore.getState().running).toBe(false);
  findMissing(demo, ['A', 'C'], () => quickWorker(asked));
  await soon();
  expect(asked).toHaveLength(4);
});

test('a changed revision is worked out again, the others are not', async () => {
  const asked: string[] = [];
  findMissing(demo, ['A', 'C'], () => quickWorker(asked));
  await soon();
  const other = changedDemo((project) => {
    const changed = project.revisions[2];
    if (changed) changed.screw.radialClearanceMm = 0.2;
  });
  findMissing(other, ['A', 'C'], () => quickWorker(asked));
  await soon();
  expect(asked.slice(4)).toEqual(['C formula', 'C solved']);
});

test('the key is that of what is predicted, not of what is said about it', () => {
  const key = runKey(demo, 'C');
  const said = changedDemo((project) => {
    Object.assign(project.revisions[2] ?? {}, { name: 'x', note: 'y', locked: true, date: '2020-01-01' });
    project.benchLog = [];
    project.activeRevision = 'A';
  });
  expect(runKey(said, 'C')).toBe(key);
  for (const change of [
    (p: typeof demo) => (p.process.screwSpeedRpm += 1),
    (p: typeof demo) => (p.print.lineWidthMm += 0.1),
    (p: typeof demo) => ((p.revisions[2] as (typeof p.revisions)[number]).barrel.lengthMm += 1),
  ])
    expect(runKey(changedDemo(change), 'C')).not.toBe(key);
  expect(runKey(demo, 'A')).not.toBe(key);
});

test('a refusal is kept, a fault is tried again when asked to go on, old results are forgotten', () => {
  takeFound('r', 'formula', { kind: 'issues', run: 1, issues: [{ path: [], code: 'x', message: 'No.', remedy: '' }] });
  takeFound('f', 'formula', { kind: 'fault', run: 1, message: 'out of memory' });
  expect(runStore.getState().found.f).toEqual({ fault: 'out of memory' });
  goOnRuns();
  expect(runStore.getState().found.f).toEqual({});
  expect(runStore.getState().found.r?.refusal).toContain('No.');
  for (let i = 0; i < mostKept; i++) takeFound(`k${i}`, 'formula', { kind: 'fault', run: 1, message: 'x' });
  expect(Object.keys(runStore.getState().found)).toHaveLength(mostKept);
  expect(runStore.getState().found.r).toBeUndefined();
});

test('solved numbers and estimates are never mixed', () => {
  const [estimate, solved] = [
    { prediction, presentation },
    { prediction: { ...prediction }, presentation },
  ];
  const of = (...found: Found[]) => comparable(found.map((one, i) => ({ id: `${i}`, key: `${i}`, found: one })));
  const mixed = of({ estimate, solved }, { estimate });
  expect(mixed).toMatchObject({ solved: false, solvedCount: 1, count: 2 });
  expect(mixed.made.every(({ made }) => made === estimate)).toBe(true);
  const all = of({ estimate, solved }, { estimate, solved }, { refusal: 'no' });
  expect(all).toMatchObject({ solved: true, count: 2 });
  expect(all.made.every(({ made }) => made === solved)).toBe(true);
});

test('what is chosen follows the project; before a choice the latest and the shown one', () => {
  expect(chosenIds(demo, null)).toEqual(['A', 'B', 'C']);
  expect(chosenIds(demo, ['C', 'gone', 'A'])).toEqual(['A', 'C']);
  expect(chosenIds(demo, [])).toEqual([]);
  const many = changedDemo((project) => {
    const [first] = project.revisions;
    if (first) for (const id of ['D', 'E']) project.revisions.push({ ...first, id });
    project.activeRevision = 'A';
  });
  expect(chosenIds(many, null)).toEqual(['A', 'D', 'E']);
  expect(baseOf(['A', 'C'], 'C')).toBe('C');
  expect(baseOf(['A', 'C'], 'B')).toBe('A');
  expect(baseOf([], null)).toBeNull();
});
