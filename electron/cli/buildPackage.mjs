/** What the packer runs before it packs. */

import { ensureBuilt } from './builder.mjs';

/**
 * Brings the bundles up to date, so that never an old one is packed. Answers false: everything lies in the bundles, so
 * there are no modules to rebuild or to collect.
 */
export default async function beforeBuild() {
  await ensureBuilt(['electron', 'renderer'], console.log);
  return false;
}
