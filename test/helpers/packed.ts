/** The file list of the packed program, read by the packer's own rules. */

import { readdirSync, readFileSync, statSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join, resolve } from 'node:path';

/** What is used of the packer's rules. */
interface Rules {
  getMainFileMatchers(...words: readonly unknown[]): readonly { createFilter(): Filter }[];
}
type Filter = (path: string, facts: unknown) => boolean;

const root = resolve('.');
const fromBuilder = createRequire(createRequire(join(root, 'package.json')).resolve('electron-builder'));
/** Loads a module of the packer, or one that it uses. */
export const packerModule = (name: string): unknown =>
  createRequire(fromBuilder.resolve('app-builder-lib'))(fromBuilder.resolve(name));

/** The packing part of package.json. */
export interface PackingConfig {
  readonly files: readonly string[];
  readonly asarUnpack: readonly string[];
  readonly electronFuses: Readonly<Record<string, boolean>>;
  readonly [key: string]: unknown;
}

/** Reads the packing part of package.json. */
export const packingConfig = (): PackingConfig =>
  (JSON.parse(readFileSync('package.json', 'utf8')) as { build: PackingConfig }).build;

/** Files that would be packed, by their paths in the archive, sorted. */
export function packedFiles(): readonly string[] {
  const config = packingConfig();
  const rules = packerModule('app-builder-lib/out/fileMatcher.js') as Rules;
  const packager = {
    info: {
      projectDir: root,
      buildResourcesDir: join(root, 'assets/packaging'),
      config: { files: [...config.files] },
      debugLogger: { isEnabled: false },
    },
  };
  const asIs = (text: string) => text;
  const [matcher] = rules.getMainFileMatchers(
    root,
    join(root, 'app'),
    asIs,
    {},
    packager,
    join(root, 'release'),
    false,
  );
  const wanted = matcher.createFilter();
  const found: string[] = [];
  const walk = (folder: string) => {
    for (const name of readdirSync(join(root, folder))) {
      const path = join(folder, name);
      // where the packer never looks; walking them takes seconds
      if (['.git', 'node_modules'].includes(path) || path.startsWith('test/.out')) continue;
      const facts = statSync(join(root, path), { throwIfNoEntry: false });
      if (facts?.isDirectory()) walk(path);
      else if (facts && wanted(join(root, path), facts)) found.push(path);
    }
  };
  walk('.');
  return found.sort();
}

/** Most that the archive may weigh, MB: what is unpacked beside it is not counted. */
export const mostArchiveMb = 9.5;
