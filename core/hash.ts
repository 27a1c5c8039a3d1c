/** Content hashes: the same data gives the same text on every machine, whatever the order of its keys. */

/**
 * JSON with sorted keys and no spaces; keys whose value is undefined are left out.
 * @param value plain JSON data; depth is the caller's care
 */
export function canonicalJson(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map((item) => canonicalJson(item ?? null)).join(',')}]`;
  if (value === null || typeof value !== 'object') return JSON.stringify(value) ?? 'null';
  const entries = Object.entries(value).filter(([, item]) => item !== undefined);
  entries.sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0));
  return `{${entries.map(([key, item]) => `${JSON.stringify(key)}:${canonicalJson(item)}`).join(',')}}`;
}

/** UTF-8 bytes of a text, handed one by one; lone surrogates become U+FFFD as everywhere else. */
function* utf8(text: string): Generator<number> {
  for (const character of text) {
    const raw = character.codePointAt(0) ?? 0;
    const code = raw >= 0xd800 && raw <= 0xdfff ? 0xfffd : raw;
    if (code < 0x80) yield code;
    else if (code < 0x800) yield* [0xc0 | (code >> 6), 0x80 | (code & 63)];
    else if (code < 0x10000) yield* [0xe0 | (code >> 12), 0x80 | ((code >> 6) & 63), 0x80 | (code & 63)];
    else yield* [0xf0 | (code >> 18), 0x80 | ((code >> 12) & 63), 0x80 | ((code >> 6) & 63), 0x80 | (code & 63)];
  }
}

/**
 * FNV-1a, 64 bit, of the text's UTF-8 bytes.
 * @returns 16 hex digits
 * Source: Fowler, Noll and Vo 1991; prime 2^40 + 0x1b3, offset basis cbf29ce484222325.
 */
export function textHash(text: string): string {
  let high = 0xcbf29ce4;
  let low = 0x84222325;
  for (const byte of utf8(text)) {
    low = (low ^ byte) >>> 0;
    const product = low * 0x1b3;
    high = (Math.imul(high, 0x1b3) + Math.floor(product / 2 ** 32) + (low << 8)) >>> 0;
    low = product >>> 0;
  }
  return high.toString(16).padStart(8, '0') + low.toString(16).padStart(8, '0');
}

/**
 * Hash of plain data, independent of key order.
 * @returns 16 hex digits
 */
export const contentHash = (value: unknown): string => textHash(canonicalJson(value));
