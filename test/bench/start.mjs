/** How long a start takes: `npm run bench:start` builds what is stale, measures, and prints a table. */

import { fileURLToPath } from 'node:url';
import { runnerImport } from 'vite';
import { ensureBuilt } from '../../electron/cli/builder.mjs';

await ensureBuilt(['cli', 'electron', 'renderer'], console.log);
await runnerImport(fileURLToPath(new URL('./start.ts', import.meta.url)));
