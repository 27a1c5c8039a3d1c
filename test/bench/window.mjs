/** How smoothly the window runs: `npm run bench:window` builds what is stale, measures, and prints a table. */

import { fileURLToPath } from 'node:url';
import { runnerImport } from 'vite';
import { ensureBuilt } from '../../electron/cli/builder.mjs';

await ensureBuilt(['renderer'], console.log);
// The module does its work while it is imported: the importer closes afterwards, and later imports would fail.
await runnerImport(fileURLToPath(new URL('./window.ts', import.meta.url)));
