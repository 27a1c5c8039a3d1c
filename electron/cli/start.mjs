/** `npm start`: brings the workbench up to date, then opens it. */

import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { dist, ensureBuilt, root } from './builder.mjs';

await ensureBuilt(['cli', 'electron', 'renderer'], console.log);
const { startWorkbench } = await import(pathToFileURL(join(dist, 'cli/start.mjs')).href);
process.exitCode = await startWorkbench(process.argv.slice(2), root);
