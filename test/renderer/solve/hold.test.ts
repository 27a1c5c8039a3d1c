import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { createHold, GivenUp, longestHoldMs, passOrWait } from '../../../renderer/solve/hold.ts';
import { heldPatience } from '../../../renderer/solve/patience.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

/** What the worker would see. */
const flag = ({ shared }: { shared: SharedArrayBuffer | null }) => shared && new Int32Array(shared)[0];

test('a hold stands from its beginning to its end, or to its longest', () => {
  const hold = createHold();
  expect(flag(hold)).toBe(0);
  hold.begin();
  vi.advanceTimersByTime(200);
  expect([flag(hold), hold.held, hold.heldMs]).toEqual([1, true, 200]);
  hold.end();
  expect([flag(hold), hold.held, hold.heldMs]).toEqual([0, false, 200]);
  hold.begin();
  vi.advanceTimersByTime(2 * longestHoldMs);
  expect([flag(hold), hold.held, hold.heldMs]).toEqual([0, false, 200 + longestHoldMs]);
  hold.restart();
  expect(hold.heldMs).toBe(0);
});

test('a hold begun again lasts its whole time from there', () => {
  const hold = createHold();
  hold.begin();
  vi.advanceTimersByTime(longestHoldMs - 1);
  hold.begin();
  vi.advanceTimersByTime(longestHoldMs - 1);
  expect(hold.held).toBe(true);
});

test('a worker that is not held goes on at once', () => {
  const before = performance.now();
  passOrWait(null, 1);
  passOrWait(createHold().shared, 1);
  expect(performance.now() - before).toBeLessThan(longestHoldMs / 2);
});

test('time held counts for nothing in patience; a run to be ended is ended though it is held', () => {
  const hold = { held: true, heldMs: 1000 };
  expect(heldPatience(hold)({ sinceMs: 1100, done: 0 })).toBe(200);
  expect(heldPatience({ ...hold, held: false })({ sinceMs: 3000, done: 0.8 })).toBeCloseTo(500, 6);
  expect(heldPatience(hold)({ sinceMs: 3000, done: 0.99 })).toBe(100);
  expect(heldPatience(hold)({ sinceMs: 3000, done: 0.3 })).toBe(0);
});

test('a run that is given up ends at its next step, held or not; the next run goes on', () => {
  const hold = createHold();
  hold.begin();
  expect(hold.giveUp(7)).toBe(true);
  const before = performance.now();
  expect(() => passOrWait(hold.shared, 7)).toThrow(GivenUp);
  expect(performance.now() - before).toBeLessThan(longestHoldMs / 2);
  hold.end();
  passOrWait(hold.shared, 8);
});
