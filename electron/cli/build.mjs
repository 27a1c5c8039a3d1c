/** `npm run build`: brings everything below dist up to date. */

import { ensureBuilt } from './builder.mjs';

await ensureBuilt(['cli', 'electron', 'renderer'], console.log);
