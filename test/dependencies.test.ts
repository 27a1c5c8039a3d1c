import { readdirSync, readFileSync } from 'node:fs';
import { isBuiltin } from 'node:module';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { type Import, importsOf, readImports } from './helpers/sources.ts';

/** What the project depends on: declared, used, justified in DEVELOPERS.md, pinned, and from one place. */

interface Manifest {
  readonly dependencies: Readonly<Record<string, string>>;
  readonly devDependencies: Readonly<Record<string, string>>;
  readonly scripts: Readonly<Record<string, string>>;
}
interface Locked {
  readonly resolved?: string;
  readonly integrity?: string;
  readonly hasInstallScript?: boolean;
}
const manifest = JSON.parse(readFileSync('package.json', 'utf8')) as Manifest;
const registry = 'https://registry.npmjs.org/';
const runTime = Object.keys(manifest.dependencies);
const developing = Object.keys(manifest.devDependencies);
const locked = Object.entries(
  (JSON.parse(readFileSync('package-lock.json', 'utf8')) as { packages: Record<string, Locked> }).packages,
).filter(([path]) => path !== '');

const scripts = (folder: string) =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.mjs') && !name.startsWith('.out'))
    .map((name) => join(folder, name));
/** Imports of packages by a folder's files, scripts among them. */
const packagesOf = (folder: string): readonly Import[] =>
  [...importsOf(folder), ...scripts(folder).flatMap((file) => readImports(file, readFileSync(file, 'utf8')))].filter(
    ({ target, isPackage }) => isPackage && /^(@[\w.-]+\/)?[\w.-]+$/.test(target) && !isBuiltin(target),
  );
const inProgram = ['core', 'electron', 'renderer'].flatMap(packagesOf);
// imports in the text that the reader of imports is tested with are none
const inTests = packagesOf('test').filter(({ file }) => file !== 'test/boundaries.test.ts');

/** The section on dependencies. */
const section = /^## Dependencies[\s\S]*?(?=^## )/m.exec(readFileSync('DEVELOPERS.md', 'utf8'))?.[0] ?? '';

/** What builds and packs, and is itself in no bundle. */
const builders = ['electron', 'vite', '@vitejs/plugin-react', 'pngjs', 'marked'];

describe('packages', () => {
  test('that the program imports are its dependencies, or what builds it', () => {
    expect(inProgram.length).toBeGreaterThan(100);
    const undeclared = inProgram.filter(({ target }) => !runTime.includes(target) && !builders.includes(target));
    expect(undeclared.map(({ file, target }) => `${file}: ${target}`)).toEqual([]);
  });

  test('that tests import are declared', () => {
    const declared = [...runTime, ...developing];
    const undeclared = inTests.filter(({ target }) => !declared.includes(target));
    expect(undeclared.map(({ file, target }) => `${file}: ${target}`)).toEqual([]);
  });

  test.each(runTime)('%s is imported by the program', (name) => {
    expect(inProgram.some(({ target }) => target === name)).toBe(true);
  });

  test.each(developing)('%s is used', (name) => {
    const imported = [...inProgram, ...inTests].some(({ target }) => target === name);
    const called = Object.values(manifest.scripts).some((line) =>
      line.split(' ').includes(name.split('/').at(-1) ?? ''),
    );
    const types = name.startsWith('@types/') && [...runTime, 'node'].includes(name.slice('@types/'.length));
    // read or run by path or by name
    const byName = ['typescript', '@biomejs/biome', 'electron-builder'].includes(name);
    expect(imported || called || types || byName).toBe(true);
  });

  test.each([...runTime, ...developing])('%s is justified in DEVELOPERS.md', (name) => {
    expect(section).toContain(name.startsWith('@types/') ? '`@types/*`' : `\`${name}\``);
  });
});

describe('what is installed', () => {
  test('is pinned to the version', () => {
    const versions = Object.entries({ ...manifest.dependencies, ...manifest.devDependencies });
    expect(versions.filter(([, version]) => !/^\d+\.\d+\.\d+$/.test(version))).toEqual([]);
  });

  test('comes from the one registry, each with its digest', () => {
    expect(locked.length).toBeGreaterThan(300);
    // the lock leaves an address out where it is the registry's own
    const strange = locked.filter(
      ([, { resolved = registry, integrity }]) => !resolved.startsWith(registry) || !integrity?.startsWith('sha512-'),
    );
    expect(strange.map(([path]) => path)).toEqual([]);
  });

  test('runs no script of its own while it is installed, but for one that was looked at', () => {
    const running = locked.filter(([, { hasInstallScript }]) => hasInstallScript).map(([path]) => path);
    // picks one of two archivers that lie in the package, by the machine's kind; never needed by what we pack
    expect(running).toEqual(['node_modules/electron-winstaller']);
  });
});
