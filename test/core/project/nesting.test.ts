import { expect, test } from 'vitest';
import { nestsWithin } from '../../../core/project/nesting.ts';

test('levels are counted outside of texts alone, and millions of brackets cost no time', () => {
  expect(nestsWithin('[{"a":[1]},[[]]]', 3)).toBe(true);
  expect(nestsWithin('[{"a":[1]},[[]]]', 2)).toBe(false);
  expect(nestsWithin('["[[[[\\"[[[["]', 1)).toBe(true);
  expect(nestsWithin('['.repeat(1_000_000), 64)).toBe(false);
});
