import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseProject } from '../../../core/project/parse.ts';
import { pinned } from '../../helpers/arbitraries.ts';

const issuesOf = (text: string) => {
  const result = parseProject(text);
  return result.ok ? [] : result.issues;
};

describe('text that is no JSON', () => {
  it.each([
    ['{\n  "format": "x",\n  "version" 1\n}', 3, 13],
    ['{"a": 1,}', 1, 9],
    ['[1, 2', 1, 6],
    ['{"a": "\u0001"}', 1, 8],
    ['{"a": "\\x"}', 1, 8],
    ['{"a": 01}', 1, 8],
    ['{"a": NaN}', 1, 7],
    ['{"a": 1} trailing', 1, 10],
    ["{'a': 1}", 1, 2],
    ['{"a": "never closed', 1, 20],
  ])('%j is refused at line %d, column %d', (text, line, column) => {
    const [issue] = issuesOf(text);
    expect(issue?.code).toBe('bad-json');
    expect(issue?.message).toContain(`Line ${line}, column ${column}.`);
  });

  it.each([
    ['{"a": 1,}', 'No comma may stand after the last item'],
    ['{"a": 1,\n}', 'No comma may stand after the last item'],
    ['[1, ]', 'No comma may stand after the last item'],
    ['{"a": 0,1}', 'Decimals are written with a point: 0.1, not 0,1.'],
    ['{"a": "x", 1: 2}', 'A text in double quotes is expected.'],
    ['{\n// mine\n"a": 1}', 'No comments may stand in JSON'],
    ['// mine\n{}', 'No comments may stand in JSON'],
    [' \n', 'The file is empty.'],
  ])('%j is told what to do', (text, words) => {
    expect(issuesOf(text)[0]?.message).toContain(words);
  });

  it('a page taken for a project is sent away, not to be mended', () => {
    expect(issuesOf('<!doctype html>')[0]?.remedy).toContain('Choose a file');
    expect(issuesOf('{"a": <b>}')[0]?.remedy).toContain('Mend the text');
  });

  it('agrees with the engine on what is JSON', () => {
    const text = fc.oneof(
      fc.json(),
      fc.tuple(fc.json(), fc.nat(), fc.string({ maxLength: 2 })).map(([json, at, noise]) => {
        const cut = at % (json.length + 1);
        return json.slice(0, cut) + noise + json.slice(cut);
      }),
    );
    fc.assert(
      fc.property(text, (candidate) => {
        let valid = true;
        try {
          JSON.parse(candidate);
        } catch {
          valid = false;
        }
        const code = issuesOf(candidate)[0]?.code;
        fc.pre(code !== 'duplicate-key' && code !== 'forbidden-key');
        expect(code !== 'bad-json').toBe(valid);
      }),
      pinned(1500),
    );
  });
});
