import { describe, expect, test } from 'vitest';
import type { CheckResult } from '../../core/index.ts';
import { checksTable, worstChecks } from '../../electron/cli/checksTable.ts';
import { main } from '../../electron/cli/main.ts';

async function run(...words: string[]) {
  const results: string[] = [];
  const problems: string[] = [];
  const output = {
    result: (text: string) => void results.push(text),
    problem: (text: string) => void problems.push(text),
  };
  return { status: await main(['checks', ...words], output), results: results.join('\n'), problems };
}

describe('the command', () => {
  test('tells all of one stage as JSON, each with number, error, limit, kind and source', async () => {
    const { status, results } = await run('--json', '--quick', '--stage', 'geometry');
    expect(status).toBe(0);
    const { checks, passed, failed, kinds } = JSON.parse(results);
    expect(checks.length).toBeGreaterThan(0);
    expect([passed, failed]).toEqual([checks.length, 0]);
    expect(Object.values<number>(kinds).reduce((sum, count) => sum + count)).toBe(checks.length);
    for (const check of checks) {
      expect(check).toMatchObject({ stage: 'geometry', status: 'pass', fault: null });
      expect(check.source).not.toBe('');
      expect(check.error).toBeLessThanOrEqual(check.limit);
    }
  });

  test('refuses a stage that there is not, and names those there are', async () => {
    const { status, problems } = await run('--stage', 'hearth');
    expect(status).toBe(2);
    expect(problems.join('\n')).toMatch(/"?hearth"?[\s\S]*melting/);
  });
});

const near: CheckResult = {
  ...{ id: 'channel.near', stage: 'channel', quantity: 'Flow', unit: 'cm³/s', expected: 2, limit: 0.01, got: 2.019 },
  ...{ error: 0.0095, measure: 'relative', kind: 'published', source: 'A table', pass: true, fault: null },
};
const far: CheckResult = { ...near, id: 'channel.far', got: 2.001, error: 0.0005 };
const lost: CheckResult = { ...near, id: 'channel.lost', got: null, error: null, pass: false, fault: 'gave NaN' };

test('what failed comes first among the worst, then what is nearest to its limit', () => {
  expect(worstChecks([far, near, lost]).map(({ id }) => id)).toEqual(['channel.lost', 'channel.near', 'channel.far']);
});

test('the table says what failed and why, and counts by kind', () => {
  const table = checksTable([far, near, lost]);
  expect(table).toMatch(/FAIL \(gave NaN\)/);
  expect(table).toMatch(/95 % of its limit {2}channel\.near/);
  expect(table).toMatch(/2 of 3 within their limits: 3 published/);
});
