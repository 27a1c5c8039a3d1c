/** Tells whether something built is older than its sources. */

import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';

/** What is taken of a file: its contents, which is sure, or its size and times, which is quick. */
const ways = {
  contents: (hash, path) => hash.update(readFileSync(path)),
  // the time of change cannot be set back, so a file that was replaced is always seen
  look: (hash, _path, { size, mtimeMs, ctimeMs }) => hash.update(`${size} ${mtimeMs} ${ctimeMs}\0`),
};

/** Digest of a file or folder below `root`, by contents or look; what is missing counts as nothing. */
function digest(root, source, way) {
  const hash = createHash('sha1');
  const add = (path, name) => {
    const facts = statSync(path, { throwIfNoEntry: false });
    if (!facts) return;
    if (facts.isFile()) {
      hash.update(`${name}\0`);
      ways[way](hash, path, facts);
      return;
    }
    for (const child of readdirSync(path).sort()) add(join(path, child), `${name}/${child}`);
  };
  add(join(root, source), source);
  return hash.digest('hex');
}

/** Digest of several; what was looked at before is taken from `seen`. */
function digestAll(root, sources, way, seen = new Map()) {
  const hash = createHash('sha1');
  for (const source of sources) {
    const known = seen.get(source) ?? digest(root, source, way);
    seen.set(source, known);
    hash.update(known);
  }
  return hash.digest('hex');
}

/** Stamp for what is built of these sources now. */
export const stampFor = (root, sources) =>
  `${digestAll(root, sources, 'contents')} ${digestAll(root, sources, 'look')}`;

/**
 * Compares a stamp with the sources: `fresh`, `stale`, or `touched` where the contents are the same but not the times,
 * as after a fresh clone; what is touched is worth a new stamp, so that the next look is quick. A map in `looks` keeps
 * what was looked at for targets that share sources.
 */
export function compareStamp(root, sources, stamp, looks) {
  const [contents, look] = stamp.split(' ');
  if (look === digestAll(root, sources, 'look', looks)) return 'fresh';
  return contents === digestAll(root, sources, 'contents') ? 'touched' : 'stale';
}
