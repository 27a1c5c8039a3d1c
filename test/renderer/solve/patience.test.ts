import { expect, test } from 'vitest';
import { fieldsPatience } from '../../../renderer/solve/patience.ts';

test('a fresh run gets a moment, a run near its end may finish, a run in its middle is ended', () => {
  expect(fieldsPatience({ sinceMs: 100, done: 0 })).toBe(200);
  expect(fieldsPatience({ sinceMs: 2000, done: 0.8 })).toBeCloseTo(500, 6);
  expect(fieldsPatience({ sinceMs: 2000, done: 0.3 })).toBe(0);
  expect(fieldsPatience({ sinceMs: 2000, done: 0 })).toBe(0);
});

test('a run that hangs near its end is ended after all', () => {
  expect(fieldsPatience({ sinceMs: 60_000, done: 0.95 })).toBe(0);
});
