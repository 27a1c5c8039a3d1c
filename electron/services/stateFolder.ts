/** The program's own folder of this person: journals, recent files, logs. */

import { homedir } from 'node:os';
import { isAbsolute, join } from 'node:path';

/** What the place depends on. */
export interface StateSurroundings {
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly platform: string;
  readonly home: string;
}

const here = (): StateSurroundings => ({ env: process.env, platform: process.platform, home: homedir() });

/**
 * Path of the folder, which need not be there yet: what AUGERWRIGHT_STATE names, else where the system wants it.
 * On Linux by the XDG base directory specification, which takes absolute paths only.
 */
export function stateFolder({ env, platform, home }: StateSurroundings = here()): string {
  if (env.AUGERWRIGHT_STATE) return env.AUGERWRIGHT_STATE;
  if (platform === 'darwin') return join(home, 'Library/Application Support/Augerwright');
  if (platform === 'win32') return join(env.LOCALAPPDATA || join(home, 'AppData/Local'), 'Augerwright');
  const state = env.XDG_STATE_HOME;
  return join(state && isAbsolute(state) ? state : join(home, '.local/state'), 'augerwright');
}
