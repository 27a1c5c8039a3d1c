import { expect, test } from 'vitest';
import { isPicture } from '../../../renderer/bench/picture.ts';

const file = (...parts: (string | number[])[]) =>
  new Blob(parts.map((part) => (typeof part === 'string' ? part : new Uint8Array(part))));

test.each([
  ['a JPEG', file([0xff, 0xd8, 0xff, 0xe0], 'whatever')],
  ['a PNG', file([0x89], 'PNG\r\n', [0x1a, 0x0a], 'IHDR')],
  ['a WebP', file('RIFF', [1, 2, 3, 4], 'WEBPVP8 ')],
])('%s is opened', async (_, blob) => expect(await isPicture(blob)).toBe(true));

test.each([
  ['a drawing with code in it', file('<svg xmlns="http://www.w3.org/2000/svg"><script/></svg>')],
  ['a page', file('<!doctype html>')],
  ['a sound', file('RIFF', [1, 2, 3, 4], 'WAVEfmt ')],
  ['an animation', file('GIF89a')],
  ['nothing', file()],
  ['half a signature', file([0xff, 0xd8])],
  ['a signature further on', file(' ', [0xff, 0xd8, 0xff])],
])('%s is not, whatever its name says', async (_, blob) => expect(await isPicture(blob)).toBe(false));

test('a file that went away is not', async () => {
  const gone = { slice: () => ({ arrayBuffer: () => Promise.reject(new Error('gone')) }) } as unknown as Blob;
  expect(await isPicture(gone)).toBe(false);
});
