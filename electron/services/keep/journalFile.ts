/** One journal on the drive: lines are added at its end and flushed; it is written anew, shorter, when it grows long. */

import type { FileHandle } from 'node:fs/promises';
import { dirname } from 'node:path';
import { errorCode } from '../fileIssues.ts';
import type { Disk } from './disk.ts';
import { digest, type JournalDigest, shortened } from './journalDigest.ts';
import { decodeLines, encodeLine, type JournalLine } from './journalLines.ts';
import type { ProcessMark } from './processMark.ts';
import { replaceFile, writeAll } from './replaceFile.ts';

/** Size beyond which a journal is written anew, bytes; it may pass it by one entry. */
const longestJournal = 2 * 1024 * 1024;

/** The end of a journal, to be written at. Its calls are not to overlap. */
export interface JournalFile {
  /** Adds a line; it is on the drive when this is done. Throws what the file system threw: the lines before are whole. */
  add(line: JournalLine): Promise<void>;
  /** Shows others that its window is there. */
  touch(): Promise<void>;
  close(): Promise<void>;
}

/** How a journal is written. */
export interface JournalMeans {
  readonly path: string;
  readonly mark: ProcessMark;
  readonly disk: Disk;
  readonly longest?: number;
}

interface Open {
  readonly file: FileHandle;
  size: number;
  /** Size after which it is worth another look at how long it is. */
  shortenAt: number;
}

/** A journal that is opened, and made where there is none, with its first line. */
export function createJournalFile(means: JournalMeans): JournalFile {
  let open: Open | null = null;
  const close = async () => {
    const { file } = open ?? {};
    open = null;
    await file?.close().catch(() => undefined);
  };
  const ready = async (): Promise<Open> => {
    // Somebody may have taken the file away, as a cleaner of old files would.
    if (open && Number((await open.file.stat()).nlink) === 0) await close();
    open ??= await opened(means);
    return open;
  };
  return {
    async add(line) {
      try {
        const to = await ready();
        await append(to, encodeLine(line));
        if (to.size <= to.shortenAt) return;
        await close();
        await shorten(means);
      } catch (error) {
        // The end may be torn now: opening it again sees to that.
        await close();
        throw error;
      }
    },
    async touch() {
      const now = new Date();
      await open?.file.utimes(now, now).catch(() => undefined);
    },
    close,
  };
}

async function append(to: Open, bytes: Buffer): Promise<void> {
  await writeAll(to.file, bytes);
  await to.file.datasync();
  to.size += bytes.length;
}

/** Opens the end for writing, on a line of its own, and says who writes. */
async function opened({ path, mark, disk, longest = longestJournal }: JournalMeans): Promise<Open> {
  await disk.mkdir(dirname(path), { recursive: true, mode: 0o700 });
  const file = await disk.open(path, 'a', 0o600);
  try {
    const { size } = await file.stat();
    const writer = encodeLine({ kind: 'writer', at: new Date().toISOString(), by: mark });
    const to = { file, size, shortenAt: Math.max(longest, size * 2) };
    await append(to, size === 0 ? writer : Buffer.concat([Buffer.from('\n'), writer]));
    return to;
  } catch (error) {
    await file.close().catch(() => undefined);
    throw error;
  }
}

async function shorten({ path, disk }: JournalMeans): Promise<void> {
  const { lines } = decodeLines(await disk.readFile(path));
  const less = shortened(digest(lines), new Date().toISOString());
  await replaceFile(path, Buffer.concat(less.map(encodeLine)), { disk, mode: 0o600 });
}

/** A journal as read; null where there is none. Throws where it cannot be read at all. */
export async function readJournal(path: string, disk: Disk): Promise<(JournalDigest & { spoilt: number }) | null> {
  try {
    const { lines, spoilt } = decodeLines(await disk.readFile(path));
    return { ...digest(lines), spoilt };
  } catch (error) {
    if (errorCode(error) === 'ENOENT') return null;
    throw error;
  }
}
