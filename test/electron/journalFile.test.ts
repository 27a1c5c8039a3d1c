import { appendFileSync, readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { digest, shortened } from '../../electron/services/keep/journalDigest.ts';
import { decodeLines, encodeLine, type JournalLine } from '../../electron/services/keep/journalLines.ts';
import { createJournals } from '../../electron/services/keep/journals.ts';
import { ownMark } from '../../electron/services/keep/processMark.ts';
import { contentOf, versionOf } from '../../electron/services/keep/version.ts';
import { entry, loseWork } from './journalHelp.ts';
import { issueIn, one, scratch, two, valueIn } from './keepHelp.ts';
import { surviveKill } from './killRun.ts';

const place = scratch();
const { at, host } = place;
const journalFile = (id: string) => at(`state/journals/${id}.journal`);

describe('a damaged journal', () => {
  const kept = async () => {
    await loseWork(place, async (services) => {
      const api = services.apiFor('w');
      for (const text of ['A', 'B', 'C']) valueIn(await api.writeJournal({ journal: one, entry: entry(text) }));
    });
    return readFileSync(journalFile(one));
  };

  test('gives its last whole entry wherever it was torn, and is written on after that', async () => {
    const whole = await kept();
    for (const cut of [1, 20, 100]) {
      writeFileSync(journalFile(one), whole.subarray(0, whole.length - cut));
      expect(valueIn(await host().apiFor('n').readRecovery({ id: one }))).toMatchObject(
        // only the newline is missing: the line itself is whole
        { text: cut === 1 ? 'C' : 'B' },
      );
    }
    const services = host();
    valueIn(await services.apiFor('w').writeJournal({ journal: one, entry: entry('D') }));
    expect(valueIn(await services.apiFor('w').readRecovery({ id: one }))).toMatchObject({ text: 'D' });
  });

  test('gives one of the states that were written, or says so, whichever byte is spoilt', async () => {
    const whole = await kept();
    const api = host().apiFor('n');
    for (let i = 0; i < whole.length; i += 31) {
      const spoilt = Buffer.from(whole);
      spoilt[i] ^= 1 << (i % 8);
      writeFileSync(journalFile(one), spoilt);
      const work = await api.readRecovery({ id: one });
      expect(['A', 'B', 'C']).toContain(valueIn(work).text);
    }
    writeFileSync(journalFile(one), 'not a journal\n'.repeat(50));
    expect(issueIn(await api.readRecovery({ id: one })).code).toBe('recovery-spoilt');
    expect(valueIn(await api.listRecoveries({ journal: two }))).toEqual([]);
    appendFileSync(journalFile(one), whole);
    expect(valueIn(await api.listRecoveries({ journal: two }))).toMatchObject([{ id: one, edits: 3 }]);
  });
});

describe('a journal that grows long', () => {
  const states = (n: number) => Array.from({ length: n }, (_, i) => `state ${i} ${'x'.repeat(300)}`);
  const save = (text: string): JournalLine => ({
    kind: 'saved',
    at: '2026-01-01T00:00:00Z',
    version: versionOf(text),
    content: contentOf(text),
    later: 0,
  });
  const edit = (text: string): JournalLine => ({
    ...entry(text, { step: text.slice(0, 9) }),
    handle: null,
    kind: 'edit',
    at: '2026-01-01T00:00:00Z',
    content: contentOf(text),
    path: '/a.json',
    base: versionOf('base'),
  });

  test('is written anew with the same work in it, at every length', () => {
    const lines = states(12).map(edit);
    lines.splice(5, 0, save(states(12)[3]));
    for (let n = 1; n <= lines.length; n += 1) {
      const whole = digest(lines.slice(0, n));
      const short = digest(decodeLines(Buffer.concat(shortened(whole, '2026-01-02T00:00:00Z').map(encodeLine))).lines);
      const { last, ...facts } = whole;
      expect(short).toMatchObject(facts);
      expect(short.last).toMatchObject({ text: last?.text });
      // a save of an edit that was taken out still takes it off, and those before it
      const late = save(states(12)[Math.max(0, n - 4)]);
      expect(digest([...shortened(whole, '2026-01-02T00:00:00Z'), late]).edits).toBe(
        digest([...lines.slice(0, n), late]).edits,
      );
    }
  });

  test('stays below its limit on the drive', async () => {
    const journals = createJournals({ folder: at('journals'), mark: ownMark(), longest: 4_000 });
    for (const text of states(150)) {
      valueIn(await journals.write('w', one, { ...entry(text, { step: text.slice(0, 9) }), path: null, base: null }));
    }
    await journals.close();
    const bytes = readFileSync(at(`journals/${one}.journal`));
    const { lines, spoilt } = decodeLines(bytes);
    expect(spoilt).toBe(0);
    expect(digest(lines)).toMatchObject({ edits: 150, last: { text: states(150)[149] } });
    expect(digest(lines).steps).toHaveLength(100);
    expect(bytes.length).toBeLessThan(40_000);
  });
});

// two hundred of them: test/electron/long/kill.test.ts
test('a program killed while it edits and saves leaves a whole file, no hindrance, and every edit it kept', async () => {
  const heard = await surviveKill(place, 1, 20_000, 40);
  expect(heard.kept).toBeGreaterThan(2);
  await surviveKill(place, heard.edits + 1, 20_000, 15);
});
