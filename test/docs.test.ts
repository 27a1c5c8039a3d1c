import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { anchorOf } from '../renderer/handbookPages.ts';

const { scripts } = JSON.parse(readFileSync('package.json', 'utf8')) as { scripts: Record<string, string> };
const guides = ['README.md', 'DEVELOPERS.md'];
const handbook = 'assets/handbook';
const pages = existsSync(handbook) ? readdirSync(handbook).filter((name) => name.endsWith('.md')) : [];
const documents = [...guides, ...pages.map((name) => join(handbook, name))];

const read = (name: string) => readFileSync(name, 'utf8');

/** Text without what stands in blocks of code, where signs mean other things. */
const prose = (text: string) => text.replace(/^```[\s\S]*?^```/gm, '');

/** Targets of Markdown links and pictures, without web addresses. */
const links = (text: string) =>
  [...prose(text).matchAll(/\]\(([^)\s]+)\)/g)].map((match) => match[1]).filter((to) => !/^(https?:|mailto:)/.test(to));

/** Where a link of a document leads: a file, and a heading's anchor or nothing. */
function target(name: string, link: string): { file: string; anchor: string } {
  const [path = '', anchor = ''] = link.split('#');
  return { file: path === '' ? name : join(dirname(name), path), anchor };
}

const anchors = (text: string) =>
  [...prose(text).matchAll(/^#{1,6} +(.+)$/gm)].map((match) => anchorOf(match[1] ?? ''));

const folders = 'core|electron|renderer|test|assets|\\.ci';
/** Paths into our folders, in prose, in code spans and in blocks; ones with placeholders (`X`, `*`, `<`) are patterns. */
const paths = (text: string) =>
  [...text.matchAll(new RegExp(`(?<![\\w./-])(?:${folders})/[\\w./-]*\\w`, 'g'))]
    .filter((match) => !/^[*<{…]/.test(text.slice((match.index ?? 0) + match[0].length)))
    .map((match) => match[0]);

const scriptNames = (text: string) =>
  [...text.matchAll(/\bnpm (?:run (?:-s |--silent )?([\w:-]+)|(start|test)\b)/g)].map((match) => match[1] ?? match[2]);

/** Calls of our headless commands with the options that they are given: `predict --solved`. */
function optionsUsed(text: string): string[] {
  const calls = [...text.matchAll(/\bnpm (?:run -s )?(\w+) -- ([^\n`#|]*)/g)];
  return calls
    .filter(([, command]) => existsSync(`electron/cli/${command}.ts`))
    .flatMap(([, command, words]) =>
      [...(words ?? '').matchAll(/(?<=^|\s|\[)--([\w-]+)/g)].map(([, option]) => `${command} --${option}`),
    );
}

/** Whether the command's list of options holds this one. */
function optionExists(used: string): boolean {
  const [command, option = ''] = used.split(' --');
  const lists = [...read(`electron/cli/${command}.ts`).matchAll(/\b(?:flags|values|many): \[([^\]]*)\]/g)];
  return option === 'help' || lists.some(([, list]) => list?.includes(`'${option}'`));
}

describe.each(documents)('%s', (name) => {
  test('names only files and folders that exist', () => {
    const text = read(name);
    const named = [...links(text).map((link) => target(name, link ?? '').file), ...paths(text)];
    if (guides.includes(name)) expect(named.length).toBeGreaterThan(2);
    expect([...new Set(named)].filter((path) => !existsSync(path))).toEqual([]);
  });

  test('leads only to headings that exist', () => {
    const lost = links(read(name)).filter((link) => {
      const { file, anchor } = target(name, link ?? '');
      return anchor !== '' && file.endsWith('.md') && existsSync(file) && !anchors(read(file)).includes(anchor);
    });
    expect(lost).toEqual([]);
  });

  test('names only scripts that package.json has, with options that they take', () => {
    const text = read(name);
    const named = scriptNames(text);
    if (guides.includes(name)) expect(named.length).toBeGreaterThan(1);
    expect(named.filter((script) => !Object.hasOwn(scripts, script ?? ''))).toEqual([]);
    expect(optionsUsed(text).filter((used) => !optionExists(used))).toEqual([]);
  });
});

test('what is looked for in documents is found in them, and what does not exist is told', () => {
  expect(optionsUsed(read('README.md'))).toEqual(expect.arrayContaining(['predict --solved', 'sweep --vary']));
  expect(['predict --solved', 'predict --sovled', 'checks --quick'].filter(optionExists)).toEqual([
    'predict --solved',
    'checks --quick',
  ]);
  expect(anchors('# One\n```\n# two\n```\n## Three, *four* & 5: C₁\n')).toEqual(['one', 'three-four-5-c₁']);
  expect(target('assets/handbook/a.md', '../b.md#c')).toEqual({ file: 'assets/b.md', anchor: 'c' });
});

const pictures = JSON.parse(read('test/helpers/pictures.json')) as Record<
  'readme' | 'handbook',
  { limitBytes: number; pictures: readonly { picture: string }[] }
>;
const images = (text: string) => [...prose(text).matchAll(/!\[([^\]]*)\]\(([^)\s]+)\)/g)];

describe.each([
  ['readme', guides, 'assets/pictures', 'png'],
  ['handbook', pages.map((name) => join(handbook, name)), 'assets/handbook/pictures', 'webp'],
] as const)('every picture of the %s', (kind, names, folder, ending) => {
  const { limitBytes, pictures: listed } = pictures[kind];
  const files = listed.map(({ picture }) => join(folder, `${picture}.${ending}`)).sort();

  test('is made by the script, is there, is shown once, and stays small', () => {
    const shown = names.flatMap((name) => images(read(name)).map(([, , to]) => join(dirname(name), to ?? '')));
    expect(shown.sort()).toEqual(files);
    expect(
      readdirSync(folder)
        .map((name) => join(folder, name))
        .sort(),
    ).toEqual(files);
    for (const file of files) expect(statSync(file).size, file).toBeLessThan(limitBytes);
  });

  test('says in words what is seen', () => {
    for (const name of names)
      for (const [all, alt] of images(read(name)))
        expect(alt?.length, all).toBeGreaterThan(kind === 'readme' ? 10 : 40);
  });
});

test('every page of the handbook about a stage has a picture with a caption, and all of them together stay small', () => {
  for (const name of pages.filter((page) => page !== 'index.md')) {
    const text = read(join(handbook, name));
    expect(images(text).length, name).toBeGreaterThan(0);
    expect(text.match(/^!\[.+\]\(.+\)\n\n_[^_\n]{30,}_$/gm)?.length, name).toBe(images(text).length);
    // the machine or the data that is seen, which is our own
    for (const [caption] of text.matchAll(/(?<=\)\n\n)_[^_\n]+_$/gm)) expect(caption, name).toMatch(/demo|invented/);
  }
  const total = readdirSync(join(handbook, 'pictures')).map((name) => statSync(join(handbook, 'pictures', name)).size);
  expect(total.reduce((sum, size) => sum + size, 0)).toBeLessThan(700_000);
});

test('the test command of the README is what CI runs', () => {
  const ci = read('.ci/run').trim().split('\n').at(-1) ?? '';
  expect(ci).toBe('npm ci && npm test');
  expect(read('README.md')).toContain(ci);
});

test('every script of package.json starts a file or a program that is installed', () => {
  for (const [name, command] of Object.entries(scripts)) {
    const [program, first] = command.split(' ');
    const runs = program === 'node' ? first : program === 'npm' ? 'package.json' : `node_modules/.bin/${program}`;
    expect(existsSync(runs), `${name}: ${command}`).toBe(true);
  }
});
