/**
 * Lets Node load the TypeScript of `core` itself while tests run. The test runner's own loader turns every import into
 * a property read, which makes the solvers' inner loops two to three times slower than in the built program.
 * Types are stripped and statements stay on their lines; results are kept below test/.out by the digest of the source.
 */

import { createHash } from 'node:crypto';
import { mkdir, readFile, rename, writeFile } from 'node:fs/promises';
import { SourceMap } from 'node:module';
import { resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

const kept = resolve(import.meta.dirname, '../.out/native');

/** Node's hook: the source of a module. Files other than TypeScript are left to Node. */
export async function load(url, context, next) {
  const { protocol, pathname } = new URL(url);
  if (protocol !== 'file:' || !pathname.endsWith('.ts')) return next(url, context);
  const path = fileURLToPath(url);
  const source = await stripped(path, await readFile(path, 'utf8'));
  return { format: 'module', shortCircuit: true, source };
}

/** JavaScript of a TypeScript file. */
async function stripped(path, source) {
  const digest = createHash('sha1').update(`${process.version}\0${path}\0${source}`).digest('hex');
  const place = resolve(kept, `${digest}.mjs`);
  try {
    return await readFile(place, 'utf8');
  } catch {
    const { transformWithOxc } = await import('vite');
    const { code, map } = await transformWithOxc(source, path, { lang: 'ts', sourcemap: true, target: 'node20' });
    const text = onTheirLines(code, new SourceMap(JSON.parse(JSON.stringify(map))));
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
