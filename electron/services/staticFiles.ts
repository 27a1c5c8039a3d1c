/** Finds the built renderer's files by address, and never anything outside their folder. */

import { readFile, realpath } from 'node:fs/promises';
import { extname, join, sep } from 'node:path';

const contentTypes: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.webp': 'image/webp',
  '.woff2': 'font/woff2',
  '.wasm': 'application/wasm',
  '.bin': 'application/octet-stream',
};

/** A file ready to be sent. */
export interface StaticFile {
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly contentType: string;
}

/**
 * Parts of an address's path, or null for any that could leave the folder: bad escapes, `..`, empty or hidden names,
 * separators of either system, drive letters, control characters. The path is decoded once, as a server should.
 */
export function safeParts(pathname: string): readonly string[] | null {
  let decoded: string;
  try {
    decoded = decodeURIComponent(pathname);
  } catch {
    return null;
  }
  const parts = decoded.replace(/^\//, '').split('/');
  return parts.every((part) => /^[A-Za-z0-9_][A-Za-z0-9_.-]*$/.test(part)) ? parts : null;
}

/** Reads the file an address names below `root`; the bare folder means index.html. Null when there is none. */
export async function readStatic(root: string, pathname: string): Promise<StaticFile | null> {
  const parts = safeParts(pathname === '/' || pathname === '' ? '/index.html' : pathname);
  const contentType = contentTypes[extname(parts?.at(-1) ?? '')];
  if (!parts || !contentType) return null;
  try {
    const base = await realpath(root);
    const path = await realpath(join(base, ...parts));
    if (!path.startsWith(base + sep)) return null;
    return { bytes: new Uint8Array(await readFile(path)), contentType };
  } catch {
    return null;
  }
}
