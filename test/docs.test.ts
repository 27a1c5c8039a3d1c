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

test('every picture of the README is made from a shot, is shown, and stays small', () => {
  const { pictures, limitBytes } = JSON.parse(read('test/helpers/pictures.json')) as {
    pictures: readonly { picture: string; shot: string }[];
    limitBytes: number;
  };
  const shown = links(read('README.md')).filter((to) => to?.endsWith('.png'));
  expect(shown.sort()).toEqual(pictures.map(({ picture }) => `assets/pictures/${picture}.png`).sort());
  for (const to of shown) expect(statSync(to ?? '').size, to).toBeLessThan(limitBytes);
  for (const { shot } of pictures) expect(read('DEVELOPERS.md')).toContain(shot);
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
