/** Headless commands: brings the bundle of core up to date, then runs the command named first. */

import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { dist, ensureBuilt } from './builder.mjs';

// A reader that closes early (`| head`) is no fault of ours.
process.stdout.on('error', () => process.exit(0));
await ensureBuilt(['cli']);
const { main } = await import(pathToFileURL(join(dist, 'cli/main.mjs')).href);
process.exitCode = await main(process.argv.slice(2), undefined, join(dist, 'cli/predictWorker.mjs'));
