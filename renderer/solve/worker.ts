/** Thin shell around core in a worker: project in, shape and prediction out, faults as data. */

import { config } from 'zod';
import {
  createFieldCache,
  createNeighbour,
  type Design,
  firstFigures,
  predict,
  present,
  validateDesign,
} from '../../core/index.ts';
import { faultOf } from './answering.ts';
import { GivenUp, passOrWait } from './hold.ts';
import type { Answer, Request } from './protocol.ts';
import { makeShape, shapeBuffers, shapeKey } from './shape.ts';

// The content security policy forbids code made from text, which zod would otherwise try.
config({ jitless: true });

/** What was solved stays from run to run, so that an edit solves only what it changes. */
/** Of the run under way. */
let underWay: Pick<Request, 'run' | 'hold'> = { run: 0 };

const betweenSteps = () => passOrWait(underWay.hold ?? null, underWay.run);
const cache = createFieldCache(betweenSteps);

/** An estimate is there to be quick: a coarse curve over speed, and no warming up. */
const extent = {
  formula: { curvePoints: 10, warmUp: false },
  solved: { curvePoints: 16, warmUp: true },
} as const;

/** Where the last first figures ended: the next begin there. */
const neighbour = createNeighbour();

const answer = (message: Answer, buffers: Transferable[] = []): void =>
  self.postMessage(message, { transfer: buffers });

function tellShape(run: number, design: Design, known: string | null): void {
  if (known === shapeKey(design)) {
    answer({ kind: 'sameShape', run, designHash: design.hash });
    return;
  }
  const shape = makeShape(design);
  answer({ kind: 'shape', run, shape }, shapeBuffers(shape));
}

function solve({ run, project, revisionId, withShape, knownShape, fields }: Request): void {
  const began = performance.now();
  const design = validateDesign(project, revisionId);
  if (!design.ok) {
    answer({ kind: 'issues', run, issues: design.issues });
    return;
  }
  if (fields === 'first') {
    answer({ kind: 'first', run, figures: firstFigures(design.value, neighbour) });
    return;
  }
  if (withShape) tellShape(run, design.value, knownShape);
  const tell = (done: number, stage: string) => {
    answer({ kind: 'progress', run, done, stage });
    betweenSteps();
  };
  const prediction = predict(design.value, { fields, ...extent[fields] }, tell, cache);
  const presentation = present(prediction, design.value);
  answer({ kind: 'prediction', run, prediction, presentation, tookMs: performance.now() - began });
}

self.onmessage = (event: MessageEvent<Request>) => {
  try {
    underWay = event.data;
    solve(event.data);
  } catch (fault) {
    if (fault instanceof GivenUp) return answer({ kind: 'givenUp', run: event.data.run });
    answer({ ...faultOf(fault), run: event.data.run });
  }
};
