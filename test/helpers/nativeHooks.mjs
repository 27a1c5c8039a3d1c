/**
 * Lets Node load the TypeScript of `core` itself while tests run. The test runner's own loader turns every import into
 * a property read, which makes the solvers' inner loops two to three times slower than in the built program.
 * Types are stripped and statements stay on their lines; results are kept below test/.out by the digest of the source.
 */

import { createHash } from 'node:crypto';
import { mkdir, readdir, readFile, rename, stat, writeFile } from 'node:fs/promises';
import { SourceMap } from 'node:module';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

const kept = resolve(import.meta.dirname, '../.out/native');
const core = resolve(import.meta.dirname, '../../core');
let bundled = false;

/** Node's hook: what the preloaded file asks for. */
export function initialize(wish) {
  bundled = wish?.bundled === true;
}

/** Node's hook: the source of a module. Files other than TypeScript are left to Node. */
export async function load(url, context, next) {
  const { protocol, pathname } = new URL(url);
  if (protocol !== 'file:' || !pathname.endsWith('.ts')) return next(url, context);
  const path = fileURLToPath(url);
  if (bundled && path === join(core, 'index.ts'))
    return { format: 'module', shortCircuit: true, source: await wholeCore(path) };
  const source = await stripped(path, await readFile(path, 'utf8'));
  return { format: 'module', shortCircuit: true, source };
}

/** All of core behind its door as one module; a worker of its own for each test file would else load every file anew. */
async function wholeCore(door) {
  const names = (await readdir(core, { recursive: true })).filter((name) => name.endsWith('.ts')).sort();
  const facts = await Promise.all(names.map((name) => stat(join(core, name))));
  const hash = createHash('sha1').update(process.version);
  for (const [i, { mtimeMs, size }] of facts.entries()) hash.update(`${names[i]}\0${mtimeMs}\0${size}\0`);
  return keptAs(`core-${hash.digest('hex')}`, async () => {
    const { rolldown } = await import('rolldown');
    const bundle = await rolldown({ input: door, platform: 'node', external: /^[^./]/ });
    const { output } = await bundle.generate({ format: 'esm' });
    return output[0].code;
  });
}

/** JavaScript of a TypeScript file. */
async function stripped(path, source) {
  const digest = createHash('sha1').update(`${process.version}\0${path}\0${source}`).digest('hex');
  return keptAs(digest, async () => {
    const { transformWithOxc } = await import('vite');
    const { code, map } = await transformWithOxc(source, path, { lang: 'ts', sourcemap: true, target: 'node20' });
    return onTheirLines(code, new SourceMap(JSON.parse(JSON.stringify(map))));
  });
}

/** The text kept under a name, made where there is none. */
async function keptAs(name, make) {
  const place = resolve(kept, `${name}.mjs`);
  try {
    return await readFile(place, 'utf8');
  } catch {
    const text = await make();
    // Another worker may be at the same file: write beside, then rename.
    const beside = `${place}.${process.pid}`;
    await mkdir(kept, { recursive: true });
    await writeFile(beside, text);
    await rename(beside, place);
    return text;
  }
}

/** Moves statements down to the lines they have in the source, so that a stack names the right ones. */
function onTheirLines(code, map) {
  const out = [];
  for (const [i, line] of code.split('\n').entries()) {
    const indent = line.length - line.trimStart().length;
    const { generatedLine, generatedColumn, originalLine } = map.findEntry(i, indent);
    const begins = generatedLine === i && generatedColumn === indent && /(^|[;{},])$/.test(out.at(-1) ?? '');
    while (begins && out.length < originalLine) out.push('');
    out.push(line);
  }
  return out.join('\n');
}
