import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { type Import, importsOf, readImports, sourceFiles } from './helpers/sources.ts';

const door = 'core/index.ts';
const line = ({ file, target, names }: Import) => `${file} imports ${names.join(', ') || 'types'} from ${target}`;
const inside = (folder: string) => (path: string) => path.startsWith(`${folder}/`);
const offenders = (found: readonly Import[], isWrong: (found: Import) => boolean) => found.filter(isWrong).map(line);

describe('core', () => {
  const found = importsOf('core');

  test('imports only itself and the short list of packages, types included', () => {
    expect(found.length).toBeGreaterThan(10);
    const allowed = [
      'zod',
      'papaparse',
      'ml-levenberg-marquardt',
      'pure-rand',
      'ml-direct',
      'fflate',
      '@tarikjabiri/dxf',
    ];
    expect(
      offenders(found, (one) => (one.isPackage ? !allowed.includes(one.target) : !inside('core')(one.target))),
    ).toEqual([]);
  });

  test('reads no clock and draws no unseeded random numbers', () => {
    const impure = /\bMath\.random\b|\bDate\.now\b|\bnew Date\(\)|\bperformance\.now\b/;
    expect(sourceFiles('core').filter((file) => impure.test(readFileSync(file, 'utf8')))).toEqual([]);
  });
});

describe('renderer', () => {
  const found = importsOf('renderer');

  test('enters core by its one door', () => {
    expect(offenders(found, (one) => inside('core')(one.target) && one.target !== door)).toEqual([]);
  });

  test('knows of the host only the contract, and of that only types, and only in the bridge', () => {
    const host = (one: Import) =>
      inside('electron')(one.target) || one.target === 'electron' || one.target.startsWith('node:');
    const fine = (one: Import) =>
      one.file === 'renderer/bridge.ts' && one.target === 'electron/contract.ts' && one.typeOnly;
    const settings = (one: Import) => /^renderer\/(vite\.config|kernelGlue|handbookPages)\.ts$/.test(one.file);
    expect(offenders(found, (one) => host(one) && !fine(one) && !settings(one))).toEqual([]);
    expect(found.some(fine)).toBe(true);
  });

  test('calls the host and the network in the bridge alone', () => {
    const touches = /\bwindow\.augerwright\b|\bfetch\(|\bXMLHttpRequest\b|\bWebSocket\b|\bEventSource\b/;
    const files = sourceFiles('renderer').filter((file) => touches.test(readFileSync(file, 'utf8')));
    expect(files).toEqual(['renderer/bridge.ts']);
  });

  test('computes no physics outside its solver worker', () => {
    const homes = homesOfExports(door);
    const plain =
      /^core\/(result|hash|version)\.ts$|^core\/(units|project|present|compare|export)\/|^core\/handover\/(check|names)\.ts$|^core\/design\/(validate|inspect)\.ts$|^core\/geometry\/cone\.ts$|^core\/bench\/(csv\w*|readBenchCsv|writeBenchCsv|applyCalibration|trialSheet|photoLab|planCandidates)\.ts$|^core\/doubt\/(fieldPath|labels)\.ts$|^core\/search\/(changes|goals|inputs|sweep|figures|merit)\.ts$/;
    const physics = (name: string) => name === '*' || !plain.test(homes.get(name) ?? 'unknown');
    const views = found.filter((one) => one.target === door && !/^renderer\/(\w+\/)?solve\//.test(one.file));
    expect(offenders(views, (one) => one.names.some(physics))).toEqual([]);
  });
});

describe('electron', () => {
  const found = importsOf('electron');

  test('enters core by its one door, and never the renderer', () => {
    expect(offenders(found, (one) => inside('core')(one.target) && one.target !== door)).toEqual([]);
    expect(offenders(found, (one) => inside('renderer')(one.target))).toEqual([]);
  });

  test('keeps services and headless commands free of Electron, directly and through their imports', () => {
    const plain = ['contract', 'safekeeping', 'log'].map((name) => `electron/${name}.ts`);
    const rooms = ['electron/services/', 'electron/cli/', ...plain];
    // the log's package has an entry that needs no Electron
    const shell = (target: string) => target.startsWith('electron') && target !== 'electron-log';
    const free = (path: string) => rooms.some((room) => path.startsWith(room)) || inside('core')(path);
    const ours = found.filter((one) => free(one.file));
    expect(offenders(ours, (one) => shell(one.target) && (one.isPackage || !free(one.target)))).toEqual([]);
  });
});

test('the reader of imports sees every way of importing', () => {
  const text = `
    import { a, type B, c as d } from './one.ts';
    import type { E } from '../two.ts';
    import whole, { f } from '@scope/three/deep';
    import * as all from 'four';
    import './five.ts';
    export * from './six.ts';
    export type { G } from './seven.ts';
    const later = import('./eight.ts');
    new Worker(new URL('./nine.ts', import.meta.url), { type: 'module' });`;
  const seen = readImports('room/file.ts', text).map(({ target, names }) => [target, ...names]);
  expect(seen).toEqual([
    ['room/one.ts', 'a', 'c'],
    ['two.ts'],
    ['@scope/three', '*', 'f'],
    ['four', '*'],
    ['room/six.ts', '*'],
    ['room/seven.ts'],
    ['room/five.ts', '*'],
    ['room/eight.ts', '*'],
    ['room/nine.ts', '*'],
  ]);
});

/** Which file each name that leaves core by the door comes from; `export *` is followed to its end. */
function homesOfExports(file: string): ReadonlyMap<string, string> {
  const homes = new Map<string, string>();
  const text = readFileSync(file, 'utf8');
  for (const [, name] of text.matchAll(/^export (?:async )?(?:const|function|class) (\w+)/gm)) homes.set(name, file);
  for (const { target, names } of readImports(file, text)) {
    const given = names.includes('*') ? homesOfExports(target) : names.map((name) => [name, target] as const);
    for (const [name, home] of given) homes.set(name, home);
  }
  return homes;
}
