/** The checks by which hostile cases are judged can fail: each is shown something unsound. */

import { describe, expect, test } from 'vitest';
import { assertTarget } from '../helpers/hostile/assertTarget.ts';
import { checkIssues, checkPlain, checkPrototypes } from '../helpers/hostile/sound.ts';
import { tableTargets } from '../helpers/hostile/tableTargets.ts';

describe('the checks themselves', () => {
  const issue = { path: ['a'], code: 'wrong', message: 'This is wrong.', remedy: 'Change the value.' };

  test('tell an unsound answer', () => {
    expect(() => checkIssues([issue])).not.toThrow();
    for (const bad of [
      { remedy: '' },
      { message: 'NaN is wrong.' },
      { value: 'x'.repeat(401) },
      { code: '' },
      { path: [null] },
    ])
      expect(() => checkIssues([{ ...issue, ...bad } as never]), JSON.stringify(bad)).toThrow();
    expect(() => checkIssues([])).toThrow('without a reason');
    expect(() => checkPlain(JSON.parse('[{"__proto__":1}]'))).toThrow('__proto__');
    expect(() => checkPlain({ a: new Map() })).toThrow('foreign');
  });

  test('tell a shared prototype that was changed', () => {
    const shared = Object.prototype as unknown as Record<string, unknown>;
    shared.polluted = 1;
    try {
      expect(checkPrototypes).toThrow('changed');
    } finally {
      delete shared.polluted;
    }
  });

  test('tell the recipe of a reader that throws', async () => {
    const thrower = {
      ...tableTargets[2],
      run: (text: string) => (text.includes('7') ? Promise.reject(new Error('odd')) : 'refused'),
    };
    await expect(assertTarget(thrower as never, 300, 1)).rejects.toThrow(/Counterexample.*pick/s);
  });
});
