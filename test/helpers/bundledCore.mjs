/** Preloaded into the isolated workers of host and renderer tests: core comes as one file, not as hundreds. */

import { register } from 'node:module';

register('./nativeHooks.mjs', import.meta.url, { data: { bundled: true } });
