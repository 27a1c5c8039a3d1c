/** Reads and writes one text file; every refusal is an issue. */

import { readFile, stat } from 'node:fs/promises';
import { fail, ok, type Result } from '../../core/index.ts';
import { maxProjectLength } from '../contract.ts';
import { fileIssue } from './fileIssues.ts';
import { replaceFile } from './keep/replaceFile.ts';
import { versionOf } from './keep/version.ts';

/** A text and the fingerprint of the bytes it was read from. */
export interface ReadText {
  readonly text: string;
  readonly version: string;
}

/** As `readTextFile`, with the fingerprint of the file. */
export async function readVersionedText(path: string, limit = maxProjectLength): Promise<Result<ReadText>> {
  try {
    const facts = await stat(path);
    if (facts.isDirectory()) return fail(fileIssue(path, Object.assign(new Error(), { code: 'EISDIR' })));
    if (facts.size > limit) return fail(tooLarge(path, facts.size, limit));
    const bytes = await readFile(path);
    return ok({ text: new TextDecoder('utf-8', { fatal: true }).decode(bytes), version: versionOf(bytes) });
  } catch (error) {
    return fail(error instanceof TypeError ? notText(path) : fileIssue(path, error));
  }
}

/** Whole text of a file, UTF-8. Refuses what is missing, no plain file, unreadable, not UTF-8, or over the limit. */
export async function readTextFile(path: string, limit = maxProjectLength): Promise<Result<string>> {
  const read = await readVersionedText(path, limit);
  return read.ok ? ok(read.value.text) : read;
}

/**
 * Writes beside the target, flushes, then renames over it, so that a crash leaves the old or the new file whole.
 * @param mode permissions of a file that is new
 */
export async function writeTextFile(path: string, data: string | Uint8Array, mode?: number): Promise<Result<null>> {
  try {
    await replaceFile(path, data, mode === undefined ? {} : { mode });
    return ok(null);
  } catch (error) {
    return fail(fileIssue(path, error));
  }
}

const tooLarge = (path: string, size: number, limit: number) => ({
  path: [path],
  code: 'file-too-large',
  message: 'The file is too large to be a project or a table.',
  value: `${size} bytes`,
  allowed: `up to ${limit} bytes`,
  remedy: 'Choose another file.',
});

const notText = (path: string) => ({
  path: [path],
  code: 'file-not-text',
  message: 'The file is not UTF-8 text.',
  remedy: 'Choose a project file (JSON), or a table saved as CSV in UTF-8.',
});
