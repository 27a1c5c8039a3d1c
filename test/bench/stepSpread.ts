/**
 * Long run of the STEP solids: every shipped revision, every edge project and many random screws, each written, read
 * back and held against its analytic volume. `node --import ./test/helpers/nativeCore.mjs test/bench/stepSpread.ts 300`;
 * one line for each shipped part and each refusal, then the worst of all.
 */

import fc from 'fast-check';
import type { Design } from '../../core/design/types.ts';
import { validateDesign } from '../../core/design/validate.ts';
import { buildPart, type PartName } from '../../core/handover/step/bodies.ts';
import type { BrepKernel } from '../../core/handover/step/kernel.ts';
import { readStep, writeStep } from '../../core/handover/step/stepFile.ts';
import { faultOf } from '../../core/handover/step/stepModule.ts';
import { brepKernel } from '../../electron/services/brepKernel.ts';
import { anyDesign, seed } from '../core/geometry/generate.ts';
import { edgeProjects } from '../helpers/edgeProjects.ts';
import { exampleNames, expectOk, loadDesign, loadExample } from '../helpers/projects.ts';

const kernel = (await brepKernel()) as BrepKernel;
const count = Number(process.argv[2] ?? 100);
const parts: readonly PartName[] = ['screw', 'barrel', 'nozzle'];
const worst = { difference: 0, bytes: 0, milliseconds: 0 };
let [written, refused] = [0, 0];

/** Writes and reads back one part; a line of what came of it, and whether it may be handed over. */
function attempt(design: Design, part: PartName): { line: string; good: boolean } {
  const started = performance.now();
  const body = buildPart(kernel, design, part);
  if (typeof body === 'string') return { line: body, good: false };
  const bytes = writeStep(kernel, [{ name: part, shape: body.shape }], 'AP214');
  if (typeof bytes === 'string') return { line: bytes, good: false };
  const read = readStep(kernel, bytes);
  const fault = faultOf([body], read);
  const milliseconds = performance.now() - started;
  const difference = (read?.volumes[0] ?? Number.NaN) / body.analyticVolume - 1;
  if (fault) return { line: fault.message, good: false };
  worst.difference = Math.max(worst.difference, Math.abs(difference));
  worst.bytes = Math.max(worst.bytes, bytes.length);
  worst.milliseconds = Math.max(worst.milliseconds, milliseconds);
  const size = `${(bytes.length / 1e6).toFixed(2)} MB`;
  return {
    line: `${difference.toExponential(1)}  ${read?.faces} faces  ${size}  ${milliseconds.toFixed(0)} ms`,
    good: true,
  };
}

function run(name: string, design: Design, part: PartName, quiet: boolean): void {
  let outcome: { line: string; good: boolean };
  try {
    outcome = attempt(design, part);
  } catch (fault) {
    outcome = { line: `thrown: ${String(fault)}`, good: false };
  }
  if (outcome.good) written++;
  else refused++;
  if (!outcome.good || !quiet) console.log(`${name}  ${part}  ${outcome.line}`);
}

for (const name of exampleNames) {
  for (const { id } of loadExample(name).revisions) {
    for (const part of parts) run(`${name} ${id}`, loadDesign(name, id), part, false);
  }
}
for (const [name, project] of edgeProjects) {
  for (const part of parts) run(name, expectOk(validateDesign(project, project.activeRevision)), part, true);
}
fc.sample(anyDesign, { numRuns: count, seed }).forEach((design, i) => {
  run(`random ${i}`, design, 'screw', true);
});
console.log(`${written} written, ${refused} refused; worst`, worst);
