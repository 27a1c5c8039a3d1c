/**
 * `npm test`: the whole gate. Types and style count as one test each; a crash, a run without tests and a test left out
 * count as failures. The last line is `N passed, N failed`.
 */

import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import { resolve } from 'node:path';
import { performance } from 'node:perf_hooks';

const root = resolve(import.meta.dirname, '..');
const out = resolve(root, 'test/.out');
const total = { passed: 0, failed: 0 };

function run(name, words) {
  console.log(`\n== ${name}`);
  const started = performance.now();
  const ended = spawnSync(process.execPath, words, { cwd: root, stdio: 'inherit' });
  console.log(`-- ${name}: ${((performance.now() - started) / 1000).toFixed(1)} s`);
  return ended.status === 0;
}

function add(passed, failed) {
  total.passed += passed;
  total.failed += failed;
}

/** A step that passes or fails as a whole. */
function step(name, words) {
  const passed = run(name, words);
  add(passed ? 1 : 0, passed ? 0 : 1);
  return passed;
}

/** A project of the test runner, counted from the report it writes. */
function suite(project, pattern = project) {
  const report = resolve(out, `${project}.json`);
  rmSync(report, { force: true });
  const words = ['node_modules/vitest/vitest.mjs', 'run', '--config', 'test/vitest.config.ts', '--project', pattern];
  const passed = run(project, [...words, '--reporter=default', '--reporter=json', `--outputFile.json=${report}`]);
  const counts = readCounts(report);
  const left = counts.total - counts.passed - counts.failed;
  if (left > 0) console.error(`${left} tests of ${project} did not run`);
  const failed = counts.failed + left;
  // A file that does not load, or an error outside any test, fails the run without failing a test.
  const crashed = counts.total === 0 || (!passed && failed === 0);
  if (crashed) console.error(`${project} failed outside its tests`);
  add(counts.passed, failed + (crashed ? 1 : 0));
}

/** Files that failed without a failing test did not load; each counts as one failure. */
function readCounts(report) {
  try {
    const { numTotalTests, numPassedTests, numFailedTests, testResults } = JSON.parse(readFileSync(report, 'utf8'));
    const isBroken = ({ status, assertionResults }) =>
      status === 'failed' && !assertionResults.some((one) => one.status === 'failed');
    const broken = testResults.filter(isBroken).length;
    return { total: numTotalTests + broken, passed: numPassedTests, failed: numFailedTests + broken };
  } catch {
    return { total: 0, passed: 0, failed: 0 };
  }
}

mkdirSync(out, { recursive: true });
step('types', ['test/types.mjs']);
step('format and lint', ['node_modules/@biomejs/biome/bin/biome', 'check', '.']);
const built = step('build', ['electron/cli/build.mjs']);
suite('spec', 'spec*');
if (built) suite('e2e');
else add(0, 1);
process.exitCode = total.failed === 0 ? 0 : 1;
console.log(`\n${total.passed} passed, ${total.failed} failed`);
