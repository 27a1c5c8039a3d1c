/** The program's log: a file of bounded size in the system's folder for logs, without projects and without paths. */

import { readdirSync, renameSync, rmSync } from 'node:fs';
import { basename, dirname, extname, join } from 'node:path';
import electronLog from 'electron-log/node';
import { logText } from './services/logText.ts';

/** Takes sentences and faults; each is cut down by `logText` before it is written. */
export interface Log {
  info(told: string): void;
  warn(told: string): void;
  error(told: unknown): void;
}

/** Where and how much is logged. */
export interface LogPlaces {
  readonly folder: string;
  /** Packed programs write nothing to the terminal. */
  readonly packed: boolean;
  /** What `AUGERWRIGHT_LOG` says: error, warn, info, debug or off; anything else counts as info. */
  readonly level: string | undefined;
  /** Size at which a new file is begun, bytes; three older ones are kept. */
  readonly maxSize?: number;
}

const levels = ['error', 'warn', 'info', 'debug'] as const;
const olderFiles = 3;

/** Name of the newest file. */
export const logName = 'augerwright.log';

/** Makes room for a new file: `augerwright.1.log` is the newest of the older ones. */
function rotate(path: string): void {
  const ending = extname(path);
  const older = (i: number) => join(dirname(path), `${basename(path, ending)}.${i}${ending}`);
  rmSync(older(olderFiles), { force: true });
  const there = new Set(readdirSync(dirname(path)));
  for (let i = olderFiles - 1; i >= 1; i--) if (there.has(basename(older(i)))) renameSync(older(i), older(i + 1));
  renameSync(path, older(1));
}

/** Sets the log up. A file that cannot be written never stops the program. */
export function startLog({ folder, packed, level, maxSize = 1024 * 1024 }: LogPlaces): Log {
  const wanted = level === 'off' ? false : (levels.find((one) => one === level) ?? 'info');
  const { file, console, ipc, remote } = electronLog.transports;
  file.level = wanted;
  file.maxSize = maxSize;
  file.resolvePathFn = () => join(folder, logName);
  file.archiveLogFn = (old) => {
    try {
      rotate(old.path);
    } catch {
      // Rather lose old lines than grow without end.
      old.clear();
    }
  };
  console.level = packed || wanted === false ? false : 'warn';
  for (const other of [ipc, remote]) if (other) other.level = false;
  return {
    info: (told) => electronLog.info(logText(told)),
    warn: (told) => electronLog.warn(logText(told)),
    error: (told) => electronLog.error(logText(told)),
  };
}
