import { expect, test } from 'vitest';
import { findJsonFault } from '../../../core/project/jsonScan.ts';

const nestsWithin = (text: string, deepest: number): boolean => findJsonFault(text, deepest)?.code !== 'too-deep';

test('levels are counted outside of texts alone, and millions of brackets cost no time', () => {
  expect(nestsWithin('[{"a":[1]},[[]]]', 3)).toBe(true);
  expect(nestsWithin('[{"a":[1]},[[]]]', 2)).toBe(false);
  expect(nestsWithin('["[[[[\\"[[[["]', 1)).toBe(true);
  expect(nestsWithin('['.repeat(1_000_000), 64)).toBe(false);
});
