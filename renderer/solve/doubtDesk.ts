/** Answers what a worker is asked about doubt; keeps the drawn samples between two asks. */

import { type DoubtPlan, doubtInputs, doubtPlan, type Project, sampleRun, summariseDoubt } from '../../core/index.ts';
import { doubtableFields } from './doubtable.ts';
import { doubtName } from './doubtNames.ts';
import type { DoubtAnswer, DoubtAsk } from './doubtProtocol.ts';

/** Points of the output over speed: enough for a smooth band. */
const curvePoints = 8;

/** Anything with a place and a name, renamed for people. */
const named = <T extends { readonly path: string; readonly label: string }>(
  project: Project,
  revisionId: string,
  all: readonly T[],
): T[] => all.map((one) => ({ ...one, label: doubtName(project, revisionId, one.path, one.label) }));

function drawnPlan({ project, revisionId, samples, seed }: Extract<DoubtAsk, { kind: 'draw' }>): DoubtPlan {
  const plan = doubtPlan(project, revisionId, { samples, seed, curvePoints });
  return { ...plan, inputs: named(project, revisionId, plan.inputs) };
}

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
        const fields = named(project, revisionId, doubtableFields(project, revisionId));
        return { kind: 'inputs', found: { ...found, inputs: named(project, revisionId, found.inputs) }, fields };
      }
      case 'draw':
        plan = drawnPlan(ask);
        return null;
      case 'run':
        return { kind: 'sample', result: sampleRun(drawn(), ask.index) };
      case 'sum':
        return { kind: 'summary', summary: summariseDoubt(drawn(), ask.nominal, ask.results) };
    }
  };
}
