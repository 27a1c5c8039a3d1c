/** Pictures of workshop drawings for people: `node test/helpers/drawings.mjs [EXAMPLE...]` writes test/.out/drawings/*.png. */

import { fileURLToPath } from 'node:url';
import { runnerImport } from 'vite';

// The module does its work while it is imported: the importer closes afterwards, and later imports would fail.
await runnerImport(fileURLToPath(new URL('./drawings.ts', import.meta.url)));
