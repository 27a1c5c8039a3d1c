/** `npm run bench:snap`: runs the benchmarks and keeps their figures as the baseline, with the machine named. */

import { spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { relative, resolve } from 'node:path';

const root = resolve(import.meta.dirname, '../..');
const baseline = resolve(import.meta.dirname, 'baseline.json');
const words = ['bench', '--run', '--config', 'test/vitest.config.ts', '--project', 'bench', '--outputJson', baseline];
const { status } = spawnSync(process.execPath, ['node_modules/vitest/vitest.mjs', ...words], {
  cwd: root,
  stdio: 'inherit',
});
if (status !== 0) process.exit(status ?? 1);

// Paths of this machine mean nothing on another one.
const report = JSON.parse(readFileSync(baseline, 'utf8'));
for (const file of report.files) file.filepath = relative(root, file.filepath);
report.machine = `${cpus()[0]?.model ?? 'unknown processor'}, ${cpus().length} cores, Node ${process.version}`;
writeFileSync(baseline, `${JSON.stringify(report, null, 2)}\n`);
