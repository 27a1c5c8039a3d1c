import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';

const { scripts } = JSON.parse(readFileSync('package.json', 'utf8')) as { scripts: Record<string, string> };
const documents = ['README.md', 'DEVELOPERS.md'];

/** Targets of Markdown links and pictures, without web addresses and anchors. */
const links = (text: string) =>
  [...text.matchAll(/\]\(([^)\s]+)\)/g)].map((match) => match[1]).filter((to) => !/^(https?:|mailto:|#)/.test(to));

const folders = 'core|electron|renderer|test|assets|\\.ci';
/** Paths into our folders, in prose, in code spans and in blocks; ones with placeholders (`X`, `*`, `<`) are patterns. */
const paths = (text: string) =>
  [...text.matchAll(new RegExp(`(?<![\\w./-])(?:${folders})/[\\w./-]*\\w`, 'g'))]
    .filter((match) => !/^[*<{…]/.test(text.slice((match.index ?? 0) + match[0].length)))
    .map((match) => match[0]);

const scriptNames = (text: string) =>
  [...text.matchAll(/\bnpm (?:run (?:-s |--silent )?([\w:-]+)|(start|test)\b)/g)].map((match) => match[1] ?? match[2]);

describe.each(documents)('%s', (name) => {
  const read = () => readFileSync(name, 'utf8');

  test('names only files and folders that exist', () => {
    const text = read();
    const named = [...links(text).map((to) => to.split('#')[0]), ...paths(text)];
    expect(named.length).toBeGreaterThan(2);
    expect([...new Set(named)].filter((path) => !existsSync(path))).toEqual([]);
  });

  test('names only scripts that package.json has', () => {
    const named = scriptNames(read());
    expect(named.length).toBeGreaterThan(1);
    expect(named.filter((script) => !Object.hasOwn(scripts, script))).toEqual([]);
  });
});

test('the test command of the README is what CI runs', () => {
  const ci = readFileSync('.ci/run', 'utf8').trim().split('\n').at(-1) ?? '';
  expect(ci).toBe('npm ci && npm test');
  expect(readFileSync('README.md', 'utf8')).toContain(ci);
});

test('every script of package.json starts a file or a program that is installed', () => {
  for (const [name, command] of Object.entries(scripts)) {
    const [program, first] = command.split(' ');
    const runs = program === 'node' ? first : program === 'npm' ? 'package.json' : `node_modules/.bin/${program}`;
    expect(existsSync(runs), `${name}: ${command}`).toBe(true);
  }
});
