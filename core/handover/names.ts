/** Names of files that are handed over: letters, digits, dots and dashes only, which every system takes. */

/** A text as a part of a file name: Latin letters and digits, words joined by dashes, at most 60 characters. */
function nameStem(text: string): string {
  const plain = text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/ß/g, 'ss')
    .replace(/[^A-Za-z0-9.]+/g, '-')
    .replace(/^[-.]+|[-.]+$/g, '');
  return plain.slice(0, 60).replace(/[-.]+$/, '') || 'design';
}

/**
 * A file's name from its parts: `fileName(['Demo head', 'B', 'screw'], 'stl')` is `Demo-head-B-screw.stl`.
 * @param extension without dot
 */
export const fileName = (parts: readonly string[], extension: string): string =>
  `${parts
    .filter((part) => part !== '')
    .map(nameStem)
    .join('-')
    .slice(0, 100)}.${extension}`;
