/** Pictures for people: `node test/helpers/shots.mjs [NAME...]` builds, then writes test/.out/shots/*.png. */

import { fileURLToPath } from 'node:url';
import { runnerImport } from 'vite';
import { ensureBuilt } from '../../electron/cli/builder.mjs';

await ensureBuilt(['renderer'], console.log);
// The module does its work while it is imported: the importer closes afterwards, and later imports would fail.
await runnerImport(fileURLToPath(new URL('./shots.ts', import.meta.url)));
