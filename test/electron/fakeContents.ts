/** Web contents that remember the guards put on them. */

import type { WebContents } from 'electron';
import { vi } from 'vitest';

/** Contents under test, the functions that took the guards, and a way to try an event. */
export function fakeContents() {
  const setWindowOpenHandler = vi.fn();
  const on = vi.fn();
  const session = {
    setPermissionRequestHandler: vi.fn(),
    setPermissionCheckHandler: vi.fn(),
    setDevicePermissionHandler: vi.fn(),
  };
  /** Whether the contents stopped an event of that name. */
  const stops = (name: string): boolean => {
    const preventDefault = vi.fn();
    for (const [heard, listener] of on.mock.calls) if (heard === name) listener({ preventDefault });
    return preventDefault.mock.calls.length > 0;
  };
  const contents = { setWindowOpenHandler, on, session } as unknown as WebContents;
  return { contents, setWindowOpenHandler, session, stops };
}

/** The guard that a setter was given. */
export const guardOf = (setter: ReturnType<typeof vi.fn>) =>
  setter.mock.calls[0]?.[0] as (...args: unknown[]) => unknown;
