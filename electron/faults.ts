/** Faults of the host itself, and of the engine's other processes: told, written down, and lived with. */

import { type App, dialog } from 'electron';
import type { Log } from './log.ts';
import { words } from './words.ts';

/** The part of Node's process that faults arrive at. */
export interface FaultSource {
  on(event: 'uncaughtException' | 'unhandledRejection', listener: (fault: unknown) => void): unknown;
}

/** Hears faults from now on. Each is logged; the first of those that come together is told in a dialog. */
export function hearFaults(source: FaultSource, app: Pick<App, 'on' | 'isReady'>, log: Log): void {
  let telling = false;
  const tell = async (): Promise<void> => {
    telling = true;
    const { title, detail } = words.fault;
    await dialog.showMessageBox({ type: 'error', message: title, detail, noLink: true });
  };
  const hear = (fault: unknown) => {
    log.error(fault);
    if (telling || !app.isReady()) return;
    // A dialog that fails must not be the next fault.
    tell()
      .catch(() => undefined)
      .finally(() => {
        telling = false;
      });
  };
  source.on('uncaughtException', hear);
  source.on('unhandledRejection', hear);
  app.on('child-process-gone', (_event, { type, reason, exitCode, name }) => {
    if (reason !== 'clean-exit') log.error(`process gone: ${name ?? type}, ${reason}, code ${exitCode}`);
  });
}
