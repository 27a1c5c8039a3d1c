/**
 * Makes the pictures of README and handbook anew: `node test/helpers/pictures.mjs [NAME...]` builds, takes the shots
 * that `pictures.json` names, cuts and packs them into `assets/pictures/` and `assets/handbook/pictures/`.
 */

import { fileURLToPath } from 'node:url';
import { runnerImport } from 'vite';
import { ensureBuilt } from '../../electron/cli/builder.mjs';

await ensureBuilt(['renderer'], console.log);
// The module does its work while it is imported: the importer closes afterwards, and later imports would fail.
await runnerImport(fileURLToPath(new URL('./pictures.ts', import.meta.url)));
