/** What tells a running process from one that is gone and from a later one with the same number. */

import { execFileSync } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { readFileSync, readlinkSync } from 'node:fs';
import { hostname } from 'node:os';
import { z } from 'zod';

/** A process, as its locks and journals name it. */
export const processMark = z.object({
  /** drawn anew by every host */
  instance: z.string().regex(/^[0-9a-f]{32}$/),
  pid: z.number().int().positive(),
  machine: z.string().max(255),
  /** start of the system and space of process numbers; empty where the system does not tell */
  boot: z.string().max(200),
  /** start of the process, in the system's own words; empty where it does not tell */
  started: z.string().max(200),
});

/** See `processMark`. */
export type ProcessMark = z.infer<typeof processMark>;

/** Mark of this process, for one host in it. */
export const ownMark = (): ProcessMark => ({
  instance: randomBytes(16).toString('hex'),
  pid: process.pid,
  machine: hostname(),
  boot: boot(),
  started: startOf(process.pid) ?? '',
});

/**
 * What can be told of a process from here.
 * - 'running', 'gone': known, on this machine since it was switched on
 * - 'perhaps': its number is in use, but by whom is not told
 * - 'restarted': this machine, or one of the same name, was switched on anew since, or it is another container
 * - 'elsewhere': another machine
 */
export type ProcessState = 'running' | 'gone' | 'perhaps' | 'restarted' | 'elsewhere';

/** See `ProcessState`. */
export function stateOf(mark: ProcessMark): ProcessState {
  if (mark.machine !== hostname()) return 'elsewhere';
  if (mark.boot !== boot()) return 'restarted';
  if (!isNumberInUse(mark.pid)) return 'gone';
  const started = startOf(mark.pid);
  if (started === null) return 'gone';
  if (started === '' || mark.started === '') return 'perhaps';
  return started === mark.started ? 'running' : 'gone';
}

function isNumberInUse(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'EPERM';
  }
}

const quietly = (read: () => string): string => {
  try {
    return read().trim();
  } catch {
    return '';
  }
};

let knownBoot: string | null = null;

function boot(): string {
  if (process.platform !== 'linux') return '';
  knownBoot ??= [
    quietly(() => readFileSync('/proc/sys/kernel/random/boot_id', 'utf8')),
    quietly(() => readlinkSync('/proc/self/ns/pid')),
  ].join(' ');
  return knownBoot;
}

/** Start of a process; null where it has ended, empty where the system does not tell. */
function startOf(pid: number): string | null {
  if (process.platform === 'darwin') {
    return quietly(() => execFileSync('/bin/ps', ['-o', 'lstart=', '-p', String(pid)], { encoding: 'utf8' }));
  }
  if (process.platform !== 'linux') return '';
  const stat = quietly(() => readFileSync(`/proc/${pid}/stat`, 'latin1'));
  // The name in brackets may hold anything; after it come the state and, twenty-second of all, ticks since boot.
  const words = stat.slice(stat.lastIndexOf(')') + 2).split(' ');
  if (words[0] === 'Z' || words[0] === 'X') return null;
  return words[19] ?? '';
}
