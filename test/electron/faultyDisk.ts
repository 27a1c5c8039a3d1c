/** A file system that notes every call and fails, or takes fewer bytes than given, where it is told to. */

import * as real from 'node:fs/promises';
import type { Disk } from '../../electron/services/keep/disk.ts';

/** A call: its name, with `file.` before those on an open file, and the path it is about. */
export interface Call {
  readonly name: string;
  readonly path: string;
}

/** What a call is to do: null: as ever; a code: fail with it; a number: a write takes that many bytes only. */
export type Plan = (call: Call, index: number) => string | number | null;

/** The error that the system throws with a code. */
export const fault = (code: string): Error => Object.assign(new Error(`${code}: made up by a test`), { code });

type Any = (...args: unknown[]) => unknown;

const fileCalls = ['write', 'writeFile', 'sync', 'datasync', 'chmod', 'chown', 'close', 'stat'];

/** A disk over the real one, with its calls so far. A `close` that is told to fail closes all the same, as systems do. */
export function faultyDisk(plan: Plan = () => null): { readonly disk: Disk; readonly calls: Call[] } {
  const calls: Call[] = [];
  const around = (name: string, path: string, act: Any): Any => {
    return async (...args) => {
      calls.push({ name, path });
      const wish = plan({ name, path }, calls.length - 1);
      if (typeof wish === 'string') {
        if (name === 'file.close') await act();
        throw fault(wish);
      }
      if (typeof wish === 'number') return act(args[0], args[1], Math.min(Number(args[2]), wish), args[3]);
      return act(...args);
    };
  };
  const watched = (file: object, path: string): object =>
    new Proxy(file, {
      get(target, key) {
        const value: unknown = Reflect.get(target, key);
        if (typeof value !== 'function') return value;
        const bound = (value as Any).bind(target) as Any;
        return fileCalls.includes(String(key)) ? around(`file.${String(key)}`, path, bound) : bound;
      },
    });
  const disk = Object.fromEntries(
    ['access', 'link', 'lstat', 'mkdir', 'readFile', 'readdir', 'readlink', 'realpath', 'rename', 'stat', 'unlink'].map(
      (name) => [
        name,
        (...args: unknown[]) => around(name, String(args[0]), (real as unknown as Record<string, Any>)[name])(...args),
      ],
    ),
  );
  const open = (path: string, ...rest: unknown[]) =>
    around('open', path, async () => watched((await (real.open as unknown as Any)(path, ...rest)) as object, path))();
  return { disk: { ...disk, open } as unknown as Disk, calls };
}
