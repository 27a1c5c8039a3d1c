/** Writes hand-over files in a worker: project and options in, files out, faults as data. */

import { config } from 'zod';
import {
  createFieldCache,
  type Design,
  type HandoverModule,
  handoverModules,
  handoverSource,
  type Prediction,
  predict,
  runHandover,
} from '../../../core/index.ts';
import type { JobEnd } from '../../solve/job.ts';
import type { HandoverAnswer, HandoverAsk, HandoverKind } from './protocol.ts';
import { workerTools } from './tools.ts';

// The content security policy forbids code made from text, which zod would otherwise try.
config({ jitless: true });

type Writing = Extract<HandoverAsk, { readonly kind: 'write' }>;

const answer = (message: HandoverAnswer | JobEnd, buffers: Transferable[] = []): void =>
  self.postMessage(message, { transfer: buffers });

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

async function write({ moduleId, project, revisionIds, values, date, known }: Writing): Promise<void> {
  const module = handoverModules.find(({ id }) => id === moduleId);
  if (!module) throw new Error(`there is no kind of file called ${moduleId}`);
  const from = module.needs === 'design' ? 0 : predicting;
  const tell = (done: number, stage: string) => answer({ kind: 'progress', done, stage });
  const early = (done: number, stage: string) => tell(from * done, stage);
  const source = await handoverSource(module, project, revisionIds, date, predictor(known), early);
  if (!source.ok) return answer({ kind: 'refused', issues: source.issues });
  const late = (done: number, stage: string) => tell(from + (1 - from) * done, stage);
  const files = await runHandover(module, source.value, values, workerTools, late);
  if (!files.ok) return answer({ kind: 'refused', issues: files.issues });
  // a file's bytes may be a view into a larger buffer, which must not leave with it
  const whole = files.value.map((file) => ({ ...file, bytes: file.bytes.slice() }));
  answer(
    { kind: 'files', files: whole },
    whole.map(({ bytes }) => bytes.buffer),
  );
}

async function perform(ask: HandoverAsk): Promise<void> {
  if (ask.kind === 'kinds') answer({ kind: 'kinds', kinds: handoverModules.map(kindOf) });
  else await write(ask);
  answer({ kind: 'done' });
}

self.onmessage = (event: MessageEvent<HandoverAsk>) => {
  perform(event.data).catch((fault: unknown) => {
    answer({ kind: 'fault', message: fault instanceof Error ? `${fault.name}: ${fault.message}` : String(fault) });
  });
};
