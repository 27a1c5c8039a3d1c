/** What the checks keep of the reference solutions is what the files of those say. */

import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { caseA } from '../../core/checks/data/caseA.ts';
import { caseB } from '../../core/checks/data/caseB.ts';
import { caseC } from '../../core/checks/data/caseC.ts';
import { caseD } from '../../core/checks/data/caseD.ts';

interface Entry {
  readonly inputs: unknown;
  readonly rows?: readonly { readonly G_fraction_of_closed: number }[];
}

const load = (name: string): readonly Entry[] =>
  JSON.parse(readFileSync(new URL(`flow/${name}.json`, import.meta.url), 'utf8')).entries;

const parts = Object.entries({ caseA, caseB, caseC, caseD }).flatMap(([name, kept]) =>
  Object.entries<Entry>(kept).map(([place, entry]) => [name, Number(place), entry] as const),
);

test.each(parts)('%s, entry %i', (name, place, kept) => {
  const { rows: all = [], ...whole } = load(name)[place];
  const { rows = [], ...rest } = kept;
  expect(kept.inputs).toEqual(whole.inputs);
  expect(whole).toMatchObject(rest);
  for (const row of rows) {
    expect(all.find((one) => one.G_fraction_of_closed === row.G_fraction_of_closed)).toMatchObject(row);
  }
});
