import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { expect, test } from 'vitest';
import { scratch } from '../keepHelp.ts';
import { surviveKill } from '../killRun.ts';

const place = scratch();
const kills = Number(process.env.KILLS ?? 200);

test(`a program killed ${kills} times while it edits and saves never loses what it kept`, async () => {
  const random = xoroshiro128plus(Number(process.env.SEED ?? 20_260_101));
  const upTo = (limit: number) => (random.next() >>> 0) % limit;
  let next = 1;
  const amid = { save: 0, edit: 0 };
  for (let i = 0; i < kills; i += 1) {
    const heard = await surviveKill(place, next, upTo(400_000), upTo(60));
    next = heard.edits + 1;
    if (heard.saves > heard.saved) amid.save += 1;
    else if (heard.edits > heard.kept) amid.edit += 1;
  }
  // most instants lie within a save or a journal's entry: else this would not test much
  expect(amid.save).toBeGreaterThan(kills / 8);
  expect(amid.edit).toBeGreaterThan(kills / 8);
  console.log(`killed within a save: ${amid.save}, within an entry of the journal: ${amid.edit}, of ${kills}`);
}, 1_200_000);
