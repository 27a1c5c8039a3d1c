/** Sources and readers for the tests of flow tests. */

import { strFromU8 } from 'fflate';
import { type FlowPlan, flowPlan } from '../../../core/handover/controller/flowPlan.ts';
import { runHandover } from '../../../core/handover/run.ts';
import type { HandoverModule, HandoverSource, HandoverSubject } from '../../../core/handover/types.ts';
import type { Prediction } from '../../../core/prediction/types.ts';
import { expectOk } from '../../helpers/projects.ts';
import { predictedSource } from './source.ts';
import { solidTools } from './tools.ts';

/** The demo's revision B. */
export const demo = () => predictedSource('demo', ['B']);
const values = { speeds: 4, highest: 0, collect: 60, soak: 20 };

/** The source with another prediction or design in it. */
export function changed(source: HandoverSource, change: (subject: HandoverSubject) => Partial<HandoverSubject>) {
  return { ...source, subjects: source.subjects.map((subject) => ({ ...subject, ...change(subject) })) };
}

/** The source with some of its prediction changed. */
export const withPrediction = (source: HandoverSource, change: (prediction: Prediction) => object) =>
  changed(source, ({ prediction }) => ({
    prediction: prediction && ({ ...prediction, ...change(prediction) } as Prediction),
  }));

/** The first subject, which has a prediction. */
export const subjectOf = ({ subjects: [subject] }: HandoverSource): HandoverSubject & { prediction: Prediction } =>
  subject as HandoverSubject & { prediction: Prediction };

/** The plan of a source with other options. */
export const planOf = (source: HandoverSource, more: object = {}): FlowPlan =>
  expectOk(flowPlan(subjectOf(source), { ...values, ...more }));

/** The first file of a module, its page and its codes. */
export async function written(module: HandoverModule, source: HandoverSource, given: Record<string, unknown> = {}) {
  const [file, second] = expectOk(await runHandover(module, source, given, solidTools));
  const text = strFromU8(file?.bytes ?? new Uint8Array());
  const page = strFromU8(second?.bytes ?? new Uint8Array());
  return { text, page, cautions: file?.cautions ?? [], codes: text.split('\n').map((row) => row.split(' ;')[0] ?? '') };
}
