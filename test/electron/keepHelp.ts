/** Hosts and files in a folder of their own, for the tests of what keeps work safe. */

import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach } from 'vitest';
import type { Result } from '../../core/index.ts';
import type { OpenedProject } from '../../electron/contract.ts';
import { createHost, type Host, type HostPlaces } from '../../electron/services/host.ts';

/** Journal names of two windows. */
export const [one, two] = ['1'.repeat(32), '2'.repeat(32)] as const;

/** A result's value; throws with the issues of one that failed. */
export function valueIn<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}

/** Code and message of a failed result's first issue. */
export function issueIn(result: Result<unknown>): { readonly code: string; readonly message: string } {
  if (result.ok) throw new Error(`no issue: ${JSON.stringify(result.value)}`);
  return result.issues[0];
}

/** In memory where the system has such a place: flushing a drive thousands of times takes its time. */
const quickFolder = (): string => (existsSync('/dev/shm') ? '/dev/shm' : tmpdir());

/** A folder that is emptied after every test, with hosts that are closed. */
export function scratch() {
  let folder = '';
  let hosts: Host[] = [];
  beforeEach(() => {
    folder = mkdtempSync(join(quickFolder(), 'augerwright-keep-'));
  });
  afterEach(async () => {
    await Promise.all(hosts.map((host) => host.close()));
    hosts = [];
    rmSync(folder, { recursive: true, force: true });
  });
  const at = (name: string) => join(folder, name);
  return {
    at,
    /** Names of the files in the projects' folder. */
    names: () =>
      readdirSync(folder)
        .filter((name) => name !== 'state')
        .sort(),
    read: (name: string) => readFileSync(at(name), 'utf8'),
    put: (name: string, text: string) => writeFileSync(at(name), text),
    /** A start of the program of its own. */
    host(places: Partial<HostPlaces> = {}): Host {
      const made = createHost({
        examplesFolder: 'test/electron/examples',
        materialsFolder: 'assets/materials',
        startPath: null,
        recentListPath: null,
        stateFolder: join(folder, 'state'),
        ...places,
      });
      hosts.push(made);
      return made;
    },
  };
}

/** See `scratch`. */
export type Scratch = ReturnType<typeof scratch>;

/** A window with a file open. */
export async function opened(host: Host, windowId: string, path: string) {
  const file: OpenedProject = valueIn(await host.open(windowId, path));
  if (file.handle === null) throw new Error('no handle');
  const { handle, version, holder } = file;
  const api = host.apiFor(windowId);
  const save = (text: string, wish: { readonly version?: string | null; readonly evenIfChanged?: boolean } = {}) =>
    api.saveProject({ handle, text, version, evenIfChanged: false, ...wish });
  return { api, handle, version, holder, save, text: file.text };
}
