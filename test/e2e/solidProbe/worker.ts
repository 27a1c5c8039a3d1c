/** Worker of a test page: one STEP file by the module, with the window's own kernel provider. */

import demo from '../../../assets/examples/demo.json?raw';
import { handoverSource, runHandover } from '../../../core/handover/run.ts';
import { stepModule } from '../../../core/handover/step/stepModule.ts';
import { parseProject } from '../../../core/project/parse.ts';
import { brepKernel } from '../../../renderer/handover/solve/brepKernel.ts';

const none = () => Promise.reject(new Error('not wanted in this test'));
const started = performance.now();

async function answer(): Promise<unknown> {
  const project = parseProject(demo);
  if (!project.ok) return project.issues;
  const source = await handoverSource(stepModule, project.value, ['C'], '2026-05-04', none);
  if (!source.ok) return source.issues;
  const kit = { solids: none, brep: brepKernel, pdf: none };
  const files = await runHandover(stepModule, source.value, { part: 'all', schema: 'AP242' }, kit);
  if (!files.ok) return files.issues;
  return files.value.map(({ name, bytes, facts }) => ({
    name,
    size: bytes.length,
    facts,
    ms: performance.now() - started,
  }));
}

self.postMessage(await answer().catch((fault: unknown) => String(fault)));
