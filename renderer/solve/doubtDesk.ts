/** Answers what a worker is asked about doubt; keeps the drawn samples between two asks. */

import { type DoubtPlan, doubtInputs, doubtPlan, sampleRun, summariseDoubt } from '../../core/index.ts';
import { doubtableFields } from './doubtable.ts';
import type { DoubtAnswer, DoubtAsk } from './doubtProtocol.ts';

/** Points of the output over speed: enough for a smooth band. */
const curvePoints = 8;

/** A fresh desk: asks in, answers out, null where there is nothing to say. */
export function doubtDesk(): (ask: DoubtAsk) => DoubtAnswer | null {
  let plan: DoubtPlan | null = null;
  const drawn = (): DoubtPlan => {
    if (plan === null) throw new Error('no samples were drawn');
    return plan;
  };
  return (ask) => {
    switch (ask.kind) {
      case 'inputs': {
        const { project, revisionId } = ask;
        const found = doubtInputs(project, revisionId);
        return { kind: 'inputs', found, fields: doubtableFields(project, revisionId) };
      }
      case 'draw':
        plan = doubtPlan(ask.project, ask.revisionId, { samples: ask.samples, seed: ask.seed, curvePoints });
        return null;
      case 'run':
        return { kind: 'sample', result: sampleRun(drawn(), ask.index) };
      case 'sum':
        return { kind: 'summary', summary: summariseDoubt(drawn(), ask.nominal, ask.results) };
    }
  };
}
