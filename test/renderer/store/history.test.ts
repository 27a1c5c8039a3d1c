import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  mergeWithinMs,
  record,
  startHistory,
  stepBack,
  stepForward,
  stepLimit,
} from '../../../renderer/store/history.ts';

test('a step is named, taken back and made again', () => {
  const done = record(startHistory('a'), 'b', { label: 'Lead start' }, 0);
  expect(done.past.map((step) => step.label)).toEqual(['Lead start']);
  const back = stepBack(done);
  expect(back.present).toBe('a');
  expect(back.future[0]?.label).toBe('Lead start');
  expect(stepForward(back).present).toBe('b');
});

test('quick repeats in one field are one step, slow ones and other fields are not', () => {
  const field = (key: string) => ({ label: key, key });
  const first = record(startHistory(1), 2, field('depth'), 0);
  const quick = record(first, 3, field('depth'), mergeWithinMs);
  expect(stepBack(quick).present).toBe(1);
  expect(record(first, 3, field('depth'), mergeWithinMs + 1).past).toHaveLength(2);
  expect(record(first, 3, field('lead'), 1).past).toHaveLength(2);
});

test('undo ends the merging, so that the next typing is a step of its own', () => {
  const field = { label: 'depth', key: 'depth' };
  const again = record(stepForward(stepBack(record(startHistory(1), 2, field, 0))), 3, field, 1);
  expect(stepBack(again).present).toBe(2);
});

test('a change that changes nothing is no step; a new step forgets what was undone', () => {
  const start = startHistory({ a: 1 });
  expect(record(start, start.present, { label: 'nothing' }, 0)).toBe(start);
  const undone = stepBack(record(start, { a: 2 }, { label: 'x' }, 0));
  expect(record(undone, { a: 3 }, { label: 'y' }, 0).future).toEqual([]);
});

test('the oldest steps are forgotten, the latest kept', () => {
  let history = startHistory(0);
  for (let n = 1; n <= stepLimit + 5; n++) history = record(history, n, { label: String(n) }, 0);
  expect(history.past).toHaveLength(stepLimit);
  expect(history.past.at(-1)?.state).toBe(stepLimit + 4);
});

test('n steps back and n forward come home, whatever was recorded', () => {
  fc.assert(
    fc.property(fc.array(fc.integer(), { maxLength: 20 }), fc.nat(25), (values, count) => {
      let history = startHistory<{ v: number }>({ v: -1 });
      for (const v of values) history = record(history, { v }, { label: 'step' }, 0);
      const end = history.present;
      for (let i = 0; i < count; i++) history = stepBack(history);
      for (let i = 0; i < count; i++) history = stepForward(history);
      expect(history.present).toBe(end);
    }),
    { seed: 20261125 },
  );
});
