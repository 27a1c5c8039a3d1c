/** Fingerprints of files. */

import { createHash } from 'node:crypto';

/** SHA-256 of bytes, or of a text as UTF-8: 64 hex digits. */
export const versionOf = (data: string | Uint8Array): string => createHash('sha256').update(data).digest('hex');
