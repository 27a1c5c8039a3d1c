/** Texts and archives as bytes; the same input gives the same bytes. */

import { strToU8, zipSync } from 'fflate';

/** UTF-8 bytes of a text. */
export const utf8 = (text: string): Uint8Array => strToU8(text);

/** Mark before UTF-8 tables: spreadsheets read units such as mm³ wrongly without it. */
const byteOrderMark = '\ufeff';

/** UTF-8 bytes of a table for spreadsheets, marked as such. */
export const tableBytes = (text: string): Uint8Array => strToU8(byteOrderMark + text);

/**
 * A zip archive.
 * @param entries path inside the archive and bytes, in order
 * @param date YYYY-MM-DD, stamped on every entry; the archive has no other clock
 */
export function zipped(entries: readonly (readonly [path: string, bytes: Uint8Array])[], date: string): Uint8Array {
  const mtime = `${date}T12:00:00`;
  const packed = Object.fromEntries(entries.map(([path, bytes]) => [path, [bytes, { mtime, level: 6 }] as const]));
  return zipSync(packed as Parameters<typeof zipSync>[0]);
}
