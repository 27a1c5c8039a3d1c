/** What reaches the host: calls, command lines, addresses, requests, its own small files. */

import { mkdirSync, writeFileSync } from 'node:fs';
import { join, resolve, sep } from 'node:path';
import { readOptionWords } from '../../../core/handover/check.ts';
import { handoverModules } from '../../../core/handover/registry.ts';
import { parseProject } from '../../../core/project/parse.ts';
import { ok } from '../../../core/result.ts';
import { searchInputs } from '../../../core/search/inputs.ts';
import { sweepPlan } from '../../../core/search/sweep.ts';
import { readWords } from '../../../electron/cli/options.ts';
import { readAxis, takeAxes } from '../../../electron/cli/sweepAxes.ts';
import { argumentChecks, type HostApi } from '../../../electron/contract.ts';
import { answer } from '../../../electron/services/answer.ts';
import { createFileTable } from '../../../electron/services/fileTable.ts';
import { decodeLines, encodeLine } from '../../../electron/services/keep/journalLines.ts';
import { ownMark } from '../../../electron/services/keep/processMark.ts';
import { versionOf } from '../../../electron/services/keep/version.ts';
import { createRecentFiles } from '../../../electron/services/recentFiles.ts';
import { readStatic, safeParts } from '../../../electron/services/staticFiles.ts';
import { readTextFile } from '../../../electron/services/textFile.ts';
import { assetText } from '../assets.ts';
import { loadExample } from '../projects.ts';
import { mutatedText, mutatedTree, pickOf, type Recipe } from './mutate.ts';
import { askRaw, goodRequest } from './rawRequest.ts';
import { checkPlain, type Outcome, soundly } from './sound.ts';
import type { Target } from './targetTypes.ts';
import { textOf, treeOf } from './tree.ts';

/** The only folder that is written to. */
const folder = resolve(import.meta.dirname, '../../.out/hostile');
const place = (name: string): string => join(folder, `${name}-${process.pid}`);

function put(name: string, bytes: string | Uint8Array): string {
  mkdirSync(folder, { recursive: true });
  writeFileSync(place(name), bytes);
  return place(name);
}

const hex = 'a'.repeat(32);
const calls: readonly (readonly [name: string, argument: unknown])[] = [
  ...Object.keys(argumentChecks).map((name) => [name, null] as const),
  ['readExample', { id: 'demo' }],
  ['openRecent', { handle: hex }],
  ['saveProject', { handle: hex, text: '{}', version: versionOf('{}'), evenIfChanged: false }],
  ['saveProjectAs', { text: '{}', suggestedName: 'mine.json' }],
  ['importText', { kind: 'csv' }],
  [
    'setMenu',
    { groups: [{ id: 'file', label: 'File', items: [{ id: 'open', label: 'Open', keys: 'Mod+O', enabled: true }] }] },
  ],
  ['exportFile', { suggestedName: 'a.stl', data: { 0: 1, length: 1 } }],
  ['openDropped', { path: '/tmp/a.json' }],
  ['__proto__', null],
  ['constructor', {}],
];
const echo = Object.fromEntries(
  Object.keys(argumentChecks).map((name) => [name, async (argument: unknown) => ok(argument)]),
) as unknown as HostApi;

function callText({ pick, steps }: Recipe): string {
  const [name, argument] = pickOf(calls, pick);
  return `${name}\n${textOf(mutatedTree(treeOf(argument), steps, treeOf(calls.map(([, each]) => each))))}`;
}

async function call(input: string): Promise<Outcome> {
  const at = input.indexOf('\n');
  const text = input.slice(at + 1);
  let argument: unknown = text;
  try {
    argument = JSON.parse(text);
  } catch {
    // a text is as good an argument as any
  }
  const seen = soundly(await answer(echo, input.slice(0, at), argument));
  checkPlain(seen);
  return seen === null && argument !== null ? 'refused' : 'accepted';
}

const demo = loadExample('demo');
const inputs = searchInputs(demo, demo.activeRevision);
const shape = {
  usage: 'npm run -s export -- FILE',
  about: [],
  flags: ['json', 'list'],
  values: ['to', 'out', 'revision'],
  many: ['option'],
  words: [1, 3],
} as const;
const lines: readonly (readonly string[])[] = [
  ['file.json', '--to', 'mesh', '--out=a.stl', '--option', 'part=screw', '--option', 'fineness=1'],
  ['a.json', '--vary', 'process.screwSpeedRpm=5:20:16', '--json'],
  ['a.json', '--vary=process.screwSpeedRpm=1:100:3:log', '--vary', 'print.speedMmPerS=1:2:2'],
  ['-', '--revision', 'A,B', '--list'],
];

function wordsOf(input: string): readonly string[] {
  return input.split('\u001f').map((word) => word.replaceAll('\0', ''));
}

function readCommandLine(input: string): Outcome {
  const { texts, rest } = takeAxes(wordsOf(input));
  const axes = texts.map((text) => soundly(readAxis(text))).filter((axis) => axis !== null);
  if (axes.length > 0) soundly(sweepPlan(demo, demo.activeRevision, inputs, axes));
  const words = soundly(readWords(shape, rest));
  if (!words) return 'refused';
  const options = words.many.get('option') ?? [];
  for (const module of handoverModules) {
    const values = soundly(readOptionWords(module, options));
    if (values) checkPlain(values);
  }
  return 'accepted';
}

const addresses = [
  '/index.html',
  '/assets/a.js',
  '/demo.json',
  '/a/../b.json',
  '/%2e%2e/x.json',
  '/..%5cx.json',
  '/C:/x.json',
  '/a%00.json',
];
const root = resolve(import.meta.dirname, '../../electron/examples');

async function readAddress(path: string): Promise<Outcome> {
  const parts = safeParts(path);
  if (parts && !resolve(join(root, ...parts)).startsWith(root + sep))
    throw new Error(`out of the folder: ${parts.join('/')}`);
  const file = await readStatic(root, path);
  if (file && !parts && path !== '/' && path !== '') throw new Error('a file without a safe address');
  return file ? 'accepted' : 'refused';
}

async function readRecent(text: string): Promise<Outcome> {
  const recent = createRecentFiles(put('recent', text), createFileTable());
  const list = await recent.list();
  if (list.length > 12) throw new Error('a long list of recent files');
  for (const { handle, path, name } of list) {
    if (!/^[a-f0-9]{32}$/.test(handle) || typeof path !== 'string' || typeof name !== 'string')
      throw new Error('a bad entry');
  }
  return list.length > 0 ? 'accepted' : 'refused';
}

const encodings = ['utf8', 'utf8', 'utf16le', 'latin1'] as const;

async function readOnDisk(input: string): Promise<Outcome> {
  const encoding = encodings.find((each) => input.startsWith(`${each}\n`)) ?? 'utf8';
  const bytes = Buffer.from(input.slice(input.indexOf('\n') + 1), encoding);
  const marked =
    input.length % 3 === 0 && encoding === 'utf16le' ? Buffer.concat([Buffer.from([0xff, 0xfe]), bytes]) : bytes;
  const text = soundly(await readTextFile(put('file', marked)));
  return text !== null && soundly(parseProject(text)) ? 'accepted' : 'refused';
}

const journal = [
  encodeLine({ kind: 'writer', at: '2026-03-01T10:00:00Z', by: ownMark() }),
  encodeLine({ kind: 'writer', at: '2026-03-01T10:00:01Z', by: ownMark() }),
]
  .map((line) => line.toString('latin1'))
  .join('');

function readJournal(text: string): Outcome {
  const { lines: found, spoilt } = decodeLines(Buffer.from(text, 'latin1'));
  return spoilt === 0 && found.length > 0 ? 'accepted' : 'refused';
}

async function request(text: string): Promise<Outcome> {
  const status = await askRaw(text);
  if (status >= 500) throw new Error(`the host answered ${status}`);
  return status === 200 ? 'accepted' : 'refused';
}

const waxHead = assetText('examples/wax-head.json');

/** The readers. */
export const hostTargets: readonly Target[] = [
  { name: 'call from the window', share: 8, make: callText, run: call },
  {
    name: 'command line',
    share: 12,
    make: ({ pick, steps }) =>
      mutatedText(pickOf(lines, pick).join('\u001f'), steps, pickOf(lines, pick >>> 6).join('\u001f')),
    run: readCommandLine,
  },
  {
    name: 'address',
    share: 12,
    make: ({ pick, steps }) => mutatedText(pickOf(addresses, pick), steps, pickOf(addresses, pick >>> 6)),
    run: readAddress,
  },
  {
    name: 'list of recent files',
    share: 2,
    make: ({ steps }) =>
      mutatedText(textOf(mutatedTree(treeOf(['/home/me/a.json', '/b.json']), steps, 'null')), steps.slice(1)),
    run: readRecent,
  },
  {
    name: 'file on disk',
    share: 1,
    make: ({ pick, steps }) => `${pickOf(encodings, pick)}\n${mutatedText(waxHead, steps, journal)}`,
    run: readOnDisk,
  },
  { name: 'journal', share: 5, make: ({ steps }) => mutatedText(journal, steps, journal), run: readJournal },
  {
    name: 'request to the loopback host',
    share: 4,
    make: ({ pick, steps }) => mutatedText(goodRequest(pick), steps, goodRequest(pick >>> 4)).slice(0, 300_000),
    run: request,
  },
];
