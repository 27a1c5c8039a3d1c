/** Preloaded into a test worker: from then on Node itself loads TypeScript that is imported natively. */

import { register } from 'node:module';

register('./nativeHooks.mjs', import.meta.url);
