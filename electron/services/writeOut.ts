/** Writes finished files to a place on disk: into a folder, or to the path that was named; never half. */

import { mkdir, open, rm, stat } from 'node:fs/promises';
import { basename, dirname, extname, join } from 'node:path';
import { fail, type Issue, ok, type Result } from '../../core/index.ts';
import { errorCode, fileIssue } from './fileIssues.ts';
import { writeTextFile } from './textFile.ts';

/** A file to be written. */
export interface OutFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** Writes one file beside its place and renames it; the service's own, or a test's that fails. */
export type WriteOne = (path: string, bytes: Uint8Array) => Promise<Result<null>>;

const isSeparator = (letter: string | undefined): boolean => letter === '/' || letter === '\\';

async function kindOf(path: string): Promise<Result<'folder' | 'file' | 'nothing'>> {
  try {
    const facts = await stat(path);
    return ok(facts.isDirectory() ? 'folder' : 'file');
  } catch (error) {
    return errorCode(error) === 'ENOENT' ? ok('nothing') : fail(fileIssue(path, error));
  }
}

const noFolder = (path: string): Issue => ({
  path: [path],
  code: 'file-folder-missing',
  message: 'The folder to write into does not exist.',
  value: dirname(path),
  remedy: 'Create it first, or name another place.',
});

async function made(folder: string): Promise<Result<null>> {
  try {
    await mkdir(folder);
    return ok(null);
  } catch (error) {
    return errorCode(error) === 'ENOENT' ? fail(noFolder(folder)) : fail(fileIssue(folder, error));
  }
}

/** `out.stl` for several files: `out-screw.stl`, by what tells their own names apart. */
function toldApart(path: string, files: readonly OutFile[]): readonly string[] {
  const ending = extname(path);
  const stem = join(dirname(path), basename(path, ending));
  const words = files.map(({ name }) => basename(name, extname(name)).split('-'));
  const [first = []] = words;
  const shared = first.findIndex((word, i) => words.some((other) => other[i] !== word));
  return files.map(({ name }, i) => {
    const own = shared < 0 ? [] : (words[i]?.slice(shared) ?? []);
    return `${stem}-${own.length > 0 ? own.join('-') : i + 1}${extname(name)}`;
  });
}

/**
 * The paths that files will be written to.
 * - an existing folder, or a path that ends in a separator (made where only its last part is missing): own names in it
 * - any other path: that path for one file; for several, its name with what tells them apart, each with its own ending
 */
async function outPaths(out: string, files: readonly OutFile[]): Promise<Result<readonly string[]>> {
  const kind = await kindOf(out);
  if (!kind.ok) return kind;
  const asFolder = kind.value === 'folder' || isSeparator(out.at(-1));
  if (asFolder && kind.value === 'nothing') {
    const folder = await made(out);
    if (!folder.ok) return folder;
  }
  if (asFolder) return ok(files.map(({ name }) => join(out, name)));
  const parent = await kindOf(dirname(out));
  if (!parent.ok) return parent;
  if (parent.value === 'nothing') return fail(noFolder(out));
  return ok(files.length === 1 ? [out] : toldApart(out, files));
}

/** Nothing can be written there: the place that was named, and why. */
function notWritable(out: string, folder: string, error: unknown): Issue {
  const { code } = fileIssue(folder, error);
  const why: Record<string, string> = {
    EACCES: 'you may not write into it',
    EPERM: 'the system does not permit it',
    EROFS: 'it is read-only',
    ENOSPC: 'the disk is full',
    ENOTDIR: 'a part of the path is a file, not a folder',
  };
  const known = errorCode(error);
  return {
    path: [out],
    code,
    message: `Nothing can be written into the folder ${folder}: ${why[known] ?? `it takes no new files (${known || String(error)})`}.`,
    value: out,
    remedy: 'Choose another place, or change its permissions.',
  };
}

/** Makes and removes an empty file: permissions alone do not tell what a place takes. */
async function tried(out: string, folder: string): Promise<Result<null>> {
  const probe = join(folder, `.augerwright-${process.pid}-${Date.now()}`);
  try {
    await (await open(probe, 'wx')).close();
    await rm(probe, { force: true });
    return ok(null);
  } catch (error) {
    return fail(notWritable(out, folder, error));
  }
}

/**
 * Whether files can be written to a place, before anything long is worked out for it. Makes no folder.
 * @returns an issue that names the place and the cause
 */
export async function checkOut(out: string): Promise<Result<null>> {
  const kind = await kindOf(out);
  if (!kind.ok) return kind;
  if (kind.value === 'folder') return tried(out, out);
  const folder = dirname(out);
  const parent = await kindOf(folder);
  if (!parent.ok) return parent;
  if (parent.value === 'nothing') return fail(noFolder(out));
  return tried(out, folder);
}

/** The issues of a failed write, with the files that were written before it. */
const withWritten = (issues: readonly Issue[], written: readonly string[]): readonly Issue[] =>
  written.length === 0
    ? issues
    : issues.map((issue) => ({ ...issue, message: `${issue.message} Written before it: ${written.join(', ')}.` }));

/**
 * Writes all files; stops at the first that fails. Each is written beside its place and renamed, so that whatever
 * stood there stays whole until the new one is.
 * @returns the paths written, or an issue that names the path, the cause and the files written before
 */
export async function writeOut(
  out: string,
  files: readonly OutFile[],
  writeOne: WriteOne = writeTextFile,
): Promise<Result<readonly string[]>> {
  const paths = await outPaths(out, files);
  if (!paths.ok) return paths;
  for (const [i, path] of paths.value.entries()) {
    const written = await writeOne(path, files[i]?.bytes ?? new Uint8Array());
    if (!written.ok) return fail(...withWritten(written.issues, paths.value.slice(0, i)));
  }
  return paths;
}
