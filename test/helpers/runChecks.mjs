/**
 * Runs checks of a copy of core in this process and prints their results as JSON, one a line:
 * `node --import ./test/helpers/nativeCore.mjs test/helpers/runChecks.mjs FOLDER ID...`
 */

import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';

const [folder, ...ids] = process.argv.slice(2);
const from = (name) => import(pathToFileURL(join(resolve(folder), 'checks', name)).href);
const [{ checks }, { runCheck }] = await Promise.all([from('checks.ts'), from('runCheck.ts')]);
for (const id of ids) {
  const check = checks.find((one) => one.id === id);
  if (!check) throw new Error(`There is no check ${id}.`);
  const { got, pass, error, fault } = runCheck(check);
  process.stdout.write(`${JSON.stringify({ id, got, pass, error, fault })}\n`);
}
