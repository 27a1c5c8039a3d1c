/** Words for a save that would write over somebody else's work, and for files that are none. */

import type { Issue } from '../../../core/index.ts';
import type { FileHolder } from '../../safekeeping.ts';

const kept = 'Your work is still in the window.';

/** The file is no longer what this window read or wrote. */
export const changedOutside = (path: string): Issue => ({
  path: [path],
  code: 'file-changed-outside',
  message: `Somebody else has changed this file since it was opened or saved here. ${kept}`,
  remedy: 'Look at what changed, then write over it, or save under another name.',
});

/** Somebody else has the file open to write it. */
export const heldBy = (path: string, { kind, machine }: FileHolder): Issue => ({
  path: [path],
  code: 'file-held',
  message: `${kind === 'window' ? 'Another window' : `Augerwright, started once more on ${machine},`} has this file open to write it. ${kept}`,
  remedy: 'Close it there, take the file over, or save under another name.',
});

/** There is no earlier version. */
export const noPrevious = (path: string): Issue => ({
  path: [path],
  code: 'file-no-previous',
  message: 'No earlier version of this file has been kept.',
  remedy: 'One is kept from the next save on.',
});

/** A device, a pipe or a socket. */
export const notPlain = (path: string): Issue => ({
  path: [path],
  code: 'file-not-plain',
  message: 'This is not a plain file.',
  remedy: 'Choose a project file (JSON).',
});
