/** One save with faults, and what must hold after it whatever they were. */

import { rmSync } from 'node:fs';
import { expect } from 'vitest';
import { faultyDisk, type Plan } from './faultyDisk.ts';
import { issueIn, opened, type Scratch, valueIn } from './keepHelp.ts';

/** What the file holds before, and what is saved: long enough for several writes of a drive that takes few bytes. */
export const [old, fresh] = ['{"now":"old"}', `{"now":"new","pad":"${'x'.repeat(4_000)}"}`];

/**
 * Saves once while faults come as planned; the plan's calls are counted from the save on. Holds: the file is the old
 * one or, where only its durability is in doubt, the new one; the issue says so; the same save goes through once the
 * faults are over; nothing is left beside.
 * @param litterAllowed where the faults keep files from being removed too
 */
export async function endOfSave(
  place: Scratch,
  plan: Plan,
  litterAllowed = false,
): Promise<'failed' | 'passed' | 'never'> {
  const { at, names, put, read } = place;
  put('mine.json', old);
  let [armed, hit, start] = [false, false, 0];
  const { disk, calls } = faultyDisk((call, index) => {
    const wish = armed ? plan(call, index - start) : null;
    hit ||= wish !== null;
    return wish;
  });
  const host = place.host({ disk });
  const { save } = await opened(host, 'w', at('mine.json'));
  [start, armed] = [calls.length, true];
  const saved = await save(fresh);
  armed = false;
  if (saved.ok) expect(read('mine.json')).toBe(fresh);
  else {
    const { code, message } = issueIn(saved);
    expect(read('mine.json')).toBe(code === 'file-not-confirmed' ? fresh : old);
    expect(message).toMatch(/^mine\.json was .*Your work is still in the window\.$/);
    valueIn(await save(fresh));
    expect(read('mine.json')).toBe(fresh);
  }
  await host.close();
  const left = names().filter((name) => !['mine.json', '.mine.json.previous'].includes(name));
  if (!litterAllowed) expect(left).toEqual([]);
  for (const name of names()) rmSync(at(name));
  if (!hit) return 'never';
  return saved.ok ? 'passed' : 'failed';
}
