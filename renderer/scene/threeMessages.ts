/** What the 3D library says on the console: passed on, but for one word about a class that only the binding to React uses. */

import { setConsoleFunction } from 'three';

/** Whether a message is the one that nothing here can be done about: the binding still makes the older clock. */
const isKnown = (message: string): boolean => message.startsWith('THREE.Clock: This module has been deprecated');

/** Passes messages on to the console. */
export function passMessages(): void {
  setConsoleFunction((kind: 'log' | 'warn' | 'error', message: string, ...more: unknown[]) => {
    if (!isKnown(message)) console[kind](message, ...more);
  });
}
