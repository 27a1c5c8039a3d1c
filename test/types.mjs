/** `npm run test:types`: the four programs, each by its own settings. */

import { spawnSync } from 'node:child_process';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';

const home = dirname(createRequire(import.meta.url).resolve('typescript/package.json'));

let failed = false;
for (const program of ['core', 'electron', 'renderer', 'test']) {
  const check = spawnSync(process.execPath, [join(home, 'bin/tsc'), '-p', program], { stdio: 'inherit' });
  if (check.status !== 0) {
    console.error(`types of ${program}: failed`);
    failed = true;
  }
}
process.exitCode = failed ? 1 : 0;
