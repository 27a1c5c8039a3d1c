import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { isAllowed, noticeText, packageFolder, readPackage, writeNotices } from '../../electron/cli/licences.mjs';

let home: string;

beforeAll(() => {
  home = mkdtempSync(join(tmpdir(), 'augerwright-licences-'));
});
afterAll(() => rmSync(home, { recursive: true }));

/** A package of ours in a folder of its own, with a licence file where a text is given. */
function lay(name: string, manifest: object, text?: string): string {
  const folder = join(home, 'node_modules', name);
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, 'package.json'), JSON.stringify({ name, version: '1.0.0', ...manifest }));
  if (text !== undefined) writeFileSync(join(folder, 'LICENSE'), text);
  return folder;
}

test.each([
  ['MIT', true],
  ['(MIT OR GPL-3.0-only)', true],
  ['(MIT AND Zlib)', true],
  ['MIT AND GPL-3.0-only', false],
  ['GPL-3.0-only', false],
  ['LGPL-2.1-only', false],
  ['UNLICENSED', false],
])('the licence %s is allowed: %s', (licence, allowed) => expect(isAllowed('some-package', licence)).toBe(allowed));

test('the solid kernel alone may be under the lesser licence', () => {
  expect(isAllowed('replicad-opencascadejs', 'LGPL-2.1-only')).toBe(true);
  expect(isAllowed('replicad-opencascadejs', 'GPL-3.0-only')).toBe(false);
});

test('a module leads to the folder of its package, a nested one to the innermost', () => {
  expect(packageFolder('/home/a/node_modules/zod/v4/index.js?v=1')).toBe('/home/a/node_modules/zod');
  expect(packageFolder('/home/a/node_modules/@scope/one/node_modules/two/x.js')).toBe(
    '/home/a/node_modules/@scope/one/node_modules/two',
  );
  expect(packageFolder('/home/a/core/index.ts')).toBeNull();
});

test('a package is read with its licence text, or the plain terms under its author', () => {
  expect(readPackage(lay('whole', { license: 'ISC' }, 'The terms.\r\nAll.'))).toEqual({
    name: 'whole',
    version: '1.0.0',
    licence: 'ISC',
    text: 'The terms.\nAll.',
  });
  const bare = readPackage(lay('bare', { license: 'MIT', author: { name: 'An Author' } }));
  expect(bare.text).toMatch(/^Copyright \(c\) An Author\n\nPermission is hereby granted/);
});

test('a package without licence, without its text, or under another one stops the build, all of them named', () => {
  const folders = [
    lay('silent', {}, 'Some terms.'),
    lay('textless', { license: 'Apache-2.0' }),
    lay('strict', { license: 'GPL-3.0-only' }, 'Strict terms.'),
    lay('fine', { license: 'MIT' }, 'Fine terms.'),
  ];
  const file = join(home, 'notices.txt');
  const faults = [
    'silent 1.0.0 names no licence',
    'strict 1.0.0: the licence GPL-3.0-only is not on the allowed list',
    'textless 1.0.0 (Apache-2.0) carries no licence text',
  ];
  expect(() => writeNotices(folders, file)).toThrow(faults.join('\n'));
  writeNotices(folders.slice(3), file);
  expect(readFileSync(file, 'utf8')).toContain('fine 1.0.0 (MIT)\n\nFine terms.');
});

test('packages under the very same words share them', () => {
  const one = { version: '1.0.0', licence: 'MIT', text: 'Shared terms.' };
  const text = noticeText([
    { ...one, name: 'a' },
    { ...one, name: 'b' },
  ]);
  expect(text).toContain('a 1.0.0 (MIT)\nb 1.0.0 (MIT)\n\nShared terms.');
  expect(text.match(/Shared terms/g)).toHaveLength(1);
});
