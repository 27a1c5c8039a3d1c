/** What a long session leaves in memory: `npm run bench:session` builds what is stale, measures, and prints a table. */

import { fileURLToPath } from 'node:url';
import { runnerImport } from 'vite';
import { ensureBuilt } from '../../electron/cli/builder.mjs';

await ensureBuilt(['renderer'], console.log);
await runnerImport(fileURLToPath(new URL('./session.ts', import.meta.url)));
