/** What the worker that writes hand-over files does, apart from being a worker. */

import {
  createFieldCache,
  type Design,
  type HandoverModule,
  type HandoverTools,
  handoverModules,
  handoverSource,
  type Prediction,
  predict,
  runHandover,
} from '../../../core/index.ts';
import type { JobEnd } from '../../solve/job.ts';
import type { HandoverAnswer, HandoverAsk, HandoverKind } from './protocol.ts';

type Writing = Extract<HandoverAsk, { readonly kind: 'write' }>;

/** Hears an answer, and which of its buffers may be taken away. */
export type HandoverHear = (message: HandoverAnswer | JobEnd, buffers?: Transferable[]) => void;

const kindOf = ({ write: _, ...kind }: HandoverModule): HandoverKind => kind;

/** Share of the progress that predicting takes where it is needed. */
const predicting = 0.6;

/** A prediction at hand where it is solved and of this very design, else a new one. */
function predictor(known: readonly Prediction[]) {
  const cache = createFieldCache();
  return (
    design: Design,
    fields: Prediction['options']['fields'],
    tell: (done: number, stage: string) => void,
  ): Prediction => {
    const found = known.find(({ designHash, options }) => designHash === design.hash && options.fields === 'solved');
    return fields === 'solved' && found ? found : predict(design, { fields, warmUp: true }, tell, cache);
  };
}

async function write(ask: Writing, tools: HandoverTools, answer: HandoverHear): Promise<void> {
  const { moduleId, project, revisionIds, values, date, known } = ask;
  const module = handoverModules.find(({ id }) => id === moduleId);
  if (!module) throw new Error(`there is no kind of file called ${moduleId}`);
  const from = module.needs === 'design' ? 0 : predicting;
  const tell = (done: number, stage: string) => answer({ kind: 'progress', done, stage });
  const early = (done: number, stage: string) => tell(from * done, stage);
  const source = await handoverSource(module, project, revisionIds, date, predictor(known), early);
  if (!source.ok) return answer({ kind: 'refused', issues: source.issues });
  const late = (done: number, stage: string) => tell(from + (1 - from) * done, stage);
  const files = await runHandover(module, source.value, values, tools, late);
  if (!files.ok) return answer({ kind: 'refused', issues: files.issues });
  // a file's bytes may be a view into a larger buffer, which must not leave with it
  const whole = files.value.map((file) => ({ ...file, bytes: file.bytes.slice() }));
  answer(
    { kind: 'files', files: whole },
    whole.map(({ bytes }) => bytes.buffer),
  );
}

/** Does what was asked; rejects where something breaks. `done` is the last answer. */
export async function perform(ask: HandoverAsk, tools: HandoverTools, answer: HandoverHear): Promise<void> {
  if (ask.kind === 'kinds') answer({ kind: 'kinds', kinds: handoverModules.map(kindOf) });
  else await write(ask, tools, answer);
  answer({ kind: 'done' });
}
