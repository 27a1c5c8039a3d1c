/** Stored degradation laws in SI units. */

import type { StoredLaw } from '../project/materialSchema.ts';
import { assertNever } from '../result.ts';
import { toSi } from '../units.ts';
import type { KineticLaw, Step } from './kineticLaws.ts';
import { ranged } from './ranged.ts';

type StoredStep = Extract<StoredLaw, { kind: 'twoStep' }>['first'];

const stepOf = (step: StoredStep): Step => ({
  rateAtReference: ranged(step.rateAtReferencePerS),
  activation: ranged(step.activationKJPerMol, 1000),
  solidYield: step.solidYield.value,
});

/**
 * A stored degradation law in SI units.
 * @param law stored law; `kind` absent or 'order' for the order-based one
 * @returns temperatures K, energies J/mol, masses kg/mol; the order-based law has no `kind`
 */
export function kineticLawOf(law: StoredLaw): KineticLaw {
  const head = {
    id: law.id,
    observed: law.observed,
    referenceTemperature: toSi(law.referenceC, '°C'),
    validFrom: toSi(law.validFromC, '°C'),
    validTo: toSi(law.validToC, '°C'),
  };
  if (law.kind === 'twoStep') return { ...head, kind: law.kind, first: stepOf(law.first), second: stepOf(law.second) };
  const run = {
    ...head,
    rateAtReference: ranged(law.rateAtReferencePerS),
    activation: ranged(law.activationKJPerMol, 1000),
  };
  switch (law.kind) {
    case undefined:
    case 'order':
      return { ...run, order: law.order };
    case 'scission': {
      const { repeatUnitMassKgPerMol: unit, initialMolarMassKgPerMol: fresh } = law;
      const initial = fresh === undefined ? {} : { initialMolarMass: ranged(fresh) };
      return { ...run, kind: law.kind, repeatUnitMass: unit.value, ...initial };
    }
    case 'lag':
      return { ...run, kind: law.kind, lagAtReference: law.lagAtReferenceS.value };
    default:
      return assertNever(law);
  }
}
