import { describe, expect, it } from 'vitest';
import { canonicalJson, contentHash, textHash } from '../../core/hash.ts';

describe('textHash', () => {
  // Published test vectors of FNV-1a, 64 bit (Noll, FNV reference code, test_fnv.c); from memory.
  it.each([
    ['', 'cbf29ce484222325'],
    ['a', 'af63dc4c8601ec8c'],
    ['foobar', '85944171f73967e8'],
  ])('of %j is %s', (text, hash) => {
    expect(textHash(text)).toBe(hash);
  });

  it('agrees with the definition in whole numbers over UTF-8 bytes', () => {
    const text = 'Ø 14 mm, α ≥ 17°, 𝜋';
    let hash = 0xcbf29ce484222325n;
    for (const byte of new TextEncoder().encode(text))
      hash = BigInt.asUintN(64, (hash ^ BigInt(byte)) * 0x100000001b3n);
    expect(textHash(text)).toBe(hash.toString(16).padStart(16, '0'));
  });
});

describe('contentHash', () => {
  it('does not see the order of keys or absent values, but sees all else', () => {
    const base = contentHash({ a: 1, b: [1, { c: 2, d: null }] });
    expect(contentHash({ b: [1, { d: null, c: 2 }], a: 1, e: undefined })).toBe(base);
    expect(contentHash({ a: 1, b: [{ c: 2, d: null }, 1] })).not.toBe(base);
    expect(contentHash({ a: 1, b: [1, { c: 2.0000001, d: null }] })).not.toBe(base);
  });

  it('rests on JSON that can be read back', () => {
    const value = { z: 'a"b', a: [true, null, -1.5e-9] };
    expect(canonicalJson(value)).toBe('{"a":[true,null,-1.5e-9],"z":"a\\"b"}');
    expect(JSON.parse(canonicalJson(value))).toEqual(value);
  });
});
