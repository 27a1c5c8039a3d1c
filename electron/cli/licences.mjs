/**
 * The notices of other people's packages: which are in a bundle is read from the bundle itself, and a package without a
 * licence, or with one that is not on the list, stops the build.
 */

import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** Licences that allow what we do: shipping the code inside ours, the notice beside it. */
const allowed = new Set(['MIT', 'ISC', 'BSD-2-Clause', 'BSD-3-Clause', 'Apache-2.0', '0BSD', 'Zlib']);

/** Licences allowed to one package alone, each for a reason: the solid kernel stays a file of its own that can be swapped. */
const allowedTo = { 'replicad-opencascadejs': 'LGPL-2.1-only' };

/** What packages forget to say in their manifest, read from their licence file by a person, for that version alone. */
const readByHand = { 'png-js@2.0.0': 'MIT' };

/** Terms for packages that name the licence but carry no text of it; the author is named above them. */
const plainTerms = {
  MIT: `Permission is hereby granted, free of charge, to any person obtaining a copy of this software and associated
documentation files (the "Software"), to deal in the Software without restriction, including without limitation the
rights to use, copy, modify, merge, publish, distribute, sublicense, and/or sell copies of the Software, and to permit
persons to whom the Software is furnished to do so, subject to the following conditions:

The above copyright notice and this permission notice shall be included in all copies or substantial portions of the
Software.

THE SOFTWARE IS PROVIDED "AS IS", WITHOUT WARRANTY OF ANY KIND, EXPRESS OR IMPLIED, INCLUDING BUT NOT LIMITED TO THE
WARRANTIES OF MERCHANTABILITY, FITNESS FOR A PARTICULAR PURPOSE AND NONINFRINGEMENT. IN NO EVENT SHALL THE AUTHORS OR
COPYRIGHT HOLDERS BE LIABLE FOR ANY CLAIM, DAMAGES OR OTHER LIABILITY, WHETHER IN AN ACTION OF CONTRACT, TORT OR
OTHERWISE, ARISING FROM, OUT OF OR IN CONNECTION WITH THE SOFTWARE OR THE USE OR OTHER DEALINGS IN THE SOFTWARE.`,
};

/** Folder of the package a module lies in; null for modules of ours and of the bundler. */
export function packageFolder(id) {
  const path = id.replace(/\\/g, '/').replace(/^\0/, '').split('?')[0];
  return /^(.*\/node_modules\/(?:@[^/]+\/)?[^/@][^/]*)\//.exec(path)?.[1] ?? null;
}

/** Bundler plugin that adds to `folders` the packages whose code is in what is written. */
export const collectPackages = (folders) => ({
  name: 'collect-packages',
  generateBundle(_options, bundle) {
    for (const chunk of Object.values(bundle))
      for (const id of Object.keys(chunk.modules ?? {})) {
        const folder = packageFolder(id);
        if (folder !== null) folders.add(folder);
      }
  },
});

/** Whether a licence, given as SPDX names joined by OR or AND, is allowed to a package. */
export function isAllowed(name, licence) {
  if (allowedTo[name] === licence) return true;
  const choices = licence.replace(/^\(|\)$/g, '').split(' OR ');
  return choices.some((choice) => choice.split(' AND ').every((one) => allowed.has(one)));
}

/** What a package says of itself, and its licence's text. Throws where either is missing or the licence not allowed. */
export function readPackage(folder) {
  const { name, version, license, author } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
  const licence = typeof license === 'string' ? license : readByHand[`${name}@${version}`];
  if (!licence) throw new Error(`${name} ${version} names no licence`);
  if (!isAllowed(name, licence))
    throw new Error(`${name} ${version}: the licence ${licence} is not on the allowed list`);
  const files = readdirSync(folder).filter((file) => /^(licen[cs]e|copying|notice)(\.|$)/i.test(file));
  const texts = files.sort().map((file) => readFileSync(join(folder, file), 'utf8').replace(/\r\n/g, '\n').trim());
  const by = typeof author === 'string' ? author : author?.name;
  if (texts.length === 0 && plainTerms[licence])
    texts.push(`Copyright (c) ${by ?? `the authors of ${name}`}\n\n${plainTerms[licence]}`);
  if (texts.length === 0) throw new Error(`${name} ${version} (${licence}) carries no licence text`);
  return { name, version, licence, text: texts.join('\n\n') };
}

/** The notices as one text; packages under the very same words share them. */
export function noticeText(packages) {
  const byText = new Map();
  for (const one of packages) byText.set(one.text, [...(byText.get(one.text) ?? []), one]);
  const rule = '-'.repeat(80);
  const parts = [...byText].map(([text, sharing]) => {
    const names = sharing.map(({ name, version, licence }) => `${name} ${version} (${licence})`);
    return `${rule}\n${names.join('\n')}\n\n${text}\n`;
  });
  const head =
    'Augerwright itself is under the MIT licence. It contains the packages named here, each under its own licence.\n';
  return `${head}\n${parts.join('\n')}`;
}

/** Writes the notices of the packages in these folders to a file. Throws as `readPackage`, naming every offender. */
export function writeNotices(folders, file) {
  const faults = [];
  const packages = [...folders].sort().flatMap((folder) => {
    try {
      return [readPackage(folder)];
    } catch (fault) {
      faults.push(fault.message);
      return [];
    }
  });
  if (faults.length > 0) throw new Error(faults.join('\n'));
  packages.sort((a, b) => (a.name < b.name ? -1 : 1));
  writeFileSync(file, noticeText(packages));
}
