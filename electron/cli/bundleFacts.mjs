/** What is in which file of a bundle, for the tests of what the window loads first. */

import { relative } from 'node:path';

/** Name of the package or room a module belongs to, as `three` or `core/flow`; null for the bundler's own. */
export function roomOf(id, root) {
  const path = id.split('?')[0].replace(/\\/g, '/');
  if (path.startsWith('\0')) return null;
  const inPackage = /^.*\/node_modules\/((?:@[^/]+\/)?[^/]+)\//.exec(path);
  if (inPackage) return inPackage[1];
  return relative(root, path).replace(/\\/g, '/').split('/').slice(0, 2).join('/');
}

/** Bundler plugin that notes for each file of code the module it begins with and the rooms that are in it. */
export const collectFacts = (facts, root) => ({
  name: 'collect-facts',
  generateBundle(_options, bundle) {
    for (const chunk of Object.values(bundle)) {
      if (chunk.type !== 'chunk') continue;
      const parts = Object.entries(chunk.modules).filter(([, module]) => module.renderedLength > 0);
      const rooms = new Set(parts.map(([id]) => roomOf(id, root)).filter((room) => room !== null));
      const begins = chunk.facadeModuleId ? relative(root, chunk.facadeModuleId.split('?')[0]) : null;
      facts[chunk.fileName] = { begins: begins?.replace(/\\/g, '/') ?? null, rooms: [...rooms].sort() };
    }
  },
});
