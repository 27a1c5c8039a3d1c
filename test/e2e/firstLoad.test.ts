import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { expect, test } from 'vitest';

/** What the window fetches before its first picture, read from the build's own lists. */

const built = 'dist/renderer';
const readList = <T>(name: string) => JSON.parse(readFileSync(join(built, '.vite', name), 'utf8')) as T;

interface Piece {
  readonly file: string;
  readonly imports?: readonly string[];
  readonly css?: readonly string[];
}
const manifest = readList<Record<string, Piece>>('manifest.json');
const facts =
  readList<Record<string, { readonly begins: string | null; readonly rooms: readonly string[] }>>('facts.json');

/** Files that come with an entry: itself, what it imports without waiting, and their styles. */
function filesWith(...entries: readonly string[]): readonly string[] {
  const seen = new Set<string>();
  const add = (key: string) => {
    if (seen.has(key)) return;
    seen.add(key);
    for (const next of manifest[key].imports ?? []) add(next);
  };
  for (const entry of entries) add(entry);
  return [...new Set([...seen].flatMap((key) => [manifest[key].file, ...(manifest[key].css ?? [])]))];
}

const workerFile = (source: string) => Object.keys(facts).find((file) => facts[file].begins === source) ?? '';
const kB = (files: readonly string[], measure: (bytes: Buffer) => number) =>
  files.reduce((sum, file) => sum + measure(readFileSync(join(built, file))), 0) / 1000;
const raw = (bytes: Buffer) => bytes.length;
const packed = (bytes: Buffer) => gzipSync(bytes).length;
const roomsOf = (files: readonly string[]) => new Set(files.flatMap((file) => facts[file]?.rooms ?? []));

const page = filesWith('index.html');
const worker = [workerFile('renderer/solve/worker.ts')];
const scene = filesWith('index.html', 'scene/Scene.tsx').filter((file) => !page.includes(file));

/** Each a little above what was measured when it was written; raise one only for something the first picture needs. */
test.each([
  ['the page', page, 1120, 375],
  ['the worker of the first prediction', worker, 570, 190],
  ['the 3D view', scene, 1050, 290],
])('%s stays within its size', (_what, files, most, mostPacked) => {
  expect(files.length).toBeGreaterThan(0);
  expect(kB(files, raw)).toBeGreaterThan(most / 3);
  expect(kB(files, raw)).toBeLessThan(most);
  expect(kB(files, packed)).toBeLessThan(mostPacked);
});

const heavy = ['pdfkit', 'fontkit', 'brotli', 'manifold-3d', 'replicad-opencascadejs', '@tarikjabiri/dxf', 'fflate'];

test('nothing is built for developers', () => {
  const names = Object.keys(facts).filter((file) => /jsx-dev-runtime/.test(file));
  const code = page.filter((file) => file.endsWith('.js')).map((file) => readFileSync(join(built, file), 'utf8'));
  expect([...names, ...code.filter((text) => text.includes('react-stack-top-frame')).map(() => 'React')]).toEqual([]);
});

test('what writes files loads with no first picture', () => {
  for (const files of [page, worker, scene])
    expect([...heavy, 'core/handover'].filter((room) => roomsOf(files).has(room))).toEqual([]);
  const later = roomsOf(Object.keys(facts));
  expect([...heavy, 'core/handover'].filter((room) => !later.has(room))).toEqual([]);
});

test('the page loads without the 3D view, the solvers, and the dialogs of the studies', () => {
  const absent = ['three', '@react-three/fiber', 'ml-matrix', 'papaparse', 'core/flow', 'core/path', 'core/prediction'];
  expect(
    [...absent, 'renderer/search', 'renderer/colour', 'renderer/doubt'].filter((room) => roomsOf(page).has(room)),
  ).toEqual([]);
});

test('the worker of the first prediction holds nothing of the window', () => {
  expect(
    ['react', 'react-dom', 'three', 'uplot', 'renderer/panels'].filter((room) => roomsOf(worker).has(room)),
  ).toEqual([]);
});
