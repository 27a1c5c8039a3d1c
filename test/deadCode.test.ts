import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { filesOf, readSource, type SourceText, wayOf, withoutComments } from './helpers/programText.ts';

/** Nothing in the program that nobody takes, nothing unexplained, nothing too long. */

const program = filesOf(['core', 'renderer', 'electron'], /(?<!\.d)\.(tsx?|m[jt]s)$/).map(readSource);
const tests = filesOf(['test'], /\.(tsx?|mjs)$/).map(readSource);
const files = new Map(program.map((source) => [source.file, source]));

/** What is started from outside: by a script, by Electron, by the page, as a worker, by a bundler. */
const entries =
  /^electron\/(main|preload)\.ts$|^electron\/cli\/(main|start|\w+Worker)\.ts$|^electron\/cli\/\w+\.mjs$|^renderer\/(main\.tsx|vite\.config\.ts)$|^renderer\/(\w+\/)*\w*[wW]orker\.ts$/;

/** Comment that stands right before a place in a text; empty where none does. */
const commentBefore = ({ text }: SourceText, at: number): string =>
  /\/\*\*(?:(?!\*\/)[\s\S])*\*\/\s*$/.exec(text.slice(Math.max(0, at - 3000), at))?.[0] ?? '';

/** Every name a file asks another for, followed to its declaration; `FILE NAME`. */
function askedBy(sources: readonly SourceText[]): Set<string> {
  const asked = new Set<string>();
  for (const source of sources) {
    const { file, taken } = source;
    for (const { from, name } of taken) {
      if (!files.has(from)) continue;
      const all = name === '*' ? namesOf(from).filter((one) => new RegExp(`\\b${one}\\b`).test(source.code)) : [name];
      for (const one of all)
        for (const [at, its] of wayOf(files, from, one)) if (at !== file) asked.add(`${at} ${its}`);
    }
  }
  return asked;
}

const namesOf = (file: string): string[] => {
  const source = files.get(file);
  if (!source) return [];
  const { exports, handedOn } = source;
  const through = handedOn.flatMap(({ name, from }) => (name === '*' ? namesOf(from) : [name]));
  return [...exports.map(({ name }) => name), ...through];
};

const inChecks = (source: SourceText) => source.file.startsWith('core/checks/');
const asked = askedBy(program.filter((source) => !inChecks(source)));
const askedByChecks = askedBy(program.filter(inChecks));
const askedByTests = askedBy(tests);

test('every exported name is taken by another file of the program, or says that it is for tests', () => {
  const needless = program.flatMap((source) => {
    const { file, exports, handedOn } = source;
    if (entries.test(file)) return [];
    const own = exports.filter(({ name, at, isType }) => {
      const id = `${file} ${name}`;
      if (asked.has(id) || /\bfor tests\b/i.test(commentBefore(source, at))) return false;
      const usedHere = (source.code.match(new RegExp(`\\b${name}\\b`, 'g')) ?? []).length > 1;
      // what an exported function takes and gives may be named; a formula that the program uses in its file may be shown
      // to checks and tests; a check's own parts may be shown to tests
      const shown = isType || askedByTests.has(id) || askedByChecks.has(id);
      return !(shown && (inChecks(source) || usedHere));
    });
    const passed = handedOn.filter(
      ({ name }) => name !== '*' && !asked.has(`${file} ${name}`) && !askedByChecks.has(`${file} ${name}`),
    );
    return [...own, ...passed].map(({ name }) => `${file} ${name}`);
  });
  expect(needless).toEqual([]);
});

test('every exported name has a doc comment', () => {
  const bare = program.flatMap((source) =>
    source.exports.filter(({ at }) => commentBefore(source, at) === '').map(({ name }) => `${source.file} ${name}`),
  );
  expect(bare).toEqual([]);
});

test('every file of the program is taken by another or is where something starts', () => {
  const reached = new Set(program.flatMap(({ taken, handedOn }) => [...taken, ...handedOn].map(({ from }) => from)));
  expect(program.map(({ file }) => file).filter((file) => !reached.has(file) && !entries.test(file))).toEqual([]);
});

test('no file of the program is longer than 250 lines, unless it is a table that says so', () => {
  const sheets = filesOf(['renderer/styles'], /\.css$/).map((file) => ({ file, text: readFileSync(file, 'utf8') }));
  const long = [...program, ...sheets].filter(
    ({ text }) => text.split('\n').length > 251 && !text.startsWith('/** Table of '),
  );
  expect(long.map(({ file }) => file)).toEqual([]);
});

test('what is left to do says why it is left', () => {
  // nothing is left to do here: the words are what is looked for
  const open = [...program, ...tests].flatMap(({ file, text }) =>
    [...text.matchAll(/\b(TODO|FIXME|HACK|XXX)\b(?!:? because .{10})/g)].map(([word]) => `${file} ${word}`),
  );
  expect(open.filter((one) => !one.startsWith('test/deadCode'))).toEqual([]);
});

const window = program.filter(({ file }) => file.startsWith('renderer/'));

test('every class of the style sheets is given somewhere', () => {
  const givers = window.map(({ code }) => code).join('\n') + readFileSync('renderer/index.html', 'utf8');
  const words = new Set(givers.match(/[a-zA-Z][\w-]*/g));
  /** Of libraries, which give them themselves. */
  const foreign = /^(react-aria-|uplot$|u-)/;
  /** Beginnings that a class is put together from, such as `known-${state}`. */
  const begins = [
    // AxialLines.tsx puts its kind before the name
    ...['draw-', 'lane-'],
    ...Array.from(givers.matchAll(/([\w-]+-)\$\{/g), ([, begin]) => begin),
  ];
  const unused = filesOf(['renderer/styles'], /\.css$/).flatMap((file) =>
    [...new Set(withoutComments(readFileSync(file, 'utf8')).match(/\.[a-zA-Z][\w-]*(?=[^{}]*\{)/g))]
      .map((one) => one.slice(1))
      .filter((name) => !words.has(name) && !foreign.test(name) && !begins.some((begin) => name.startsWith(begin)))
      .map((name) => `${file} .${name}`),
  );
  expect(unused).toEqual([]);
});

test('every key of the strings is read somewhere', () => {
  const isStrings = ({ file }: SourceText) => /^renderer\/strings(\/|\.ts)/.test(file);
  const strings = program.filter(isStrings);
  const words = new Set(strings.flatMap(({ code }) => [...code.matchAll(/\.(\w+)/g)].map(([, word]) => word)));
  for (const source of window)
    if (!isStrings(source)) for (const word of source.code.match(/\w+/g) ?? []) words.add(word);
  // ids that core gives and the window looks up
  const rest = program.filter(({ file }) => file.startsWith('core/')).map(({ code }) => code);
  const isRead = (key: string) => words.has(key) || rest.some((code) => code.includes(key));
  const unread = strings.flatMap(({ file, code }) =>
    [...code.matchAll(/(?:^\s+|[{,] )(?:'(\w+)'|(\w+)): (?!string|number|boolean)/gm)]
      .map(([, quoted, plain]) => quoted ?? plain)
      .filter((key) => !isRead(key))
      .map((key) => `${file} ${key}`),
  );
  expect(unread).toEqual([]);
});
