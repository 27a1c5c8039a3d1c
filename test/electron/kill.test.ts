import { expect, test } from 'vitest';
import { scratch } from './keepHelp.ts';
import { surviveKill } from './killRun.ts';

const place = scratch();

// two hundred of them: test/electron/long/kill.test.ts
test('a program killed while it edits and saves leaves a whole file, no hindrance, and every edit it kept', async () => {
  const heard = await surviveKill(place, 1, 20_000, 40);
  expect(heard.kept).toBeGreaterThan(2);
  await surviveKill(place, heard.edits + 1, 20_000, 15);
});
