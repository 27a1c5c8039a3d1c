/** Edits of a stored material's degradation laws as wholes, and what is known of a material. */

import { completenessOf } from '../material/completeness.ts';
import type { TopicCompleteness } from '../material/completenessTypes.ts';
import { assertNever } from '../result.ts';
import type { Material, Sourced, StoredLaw } from './materialSchema.ts';

/** Kind of a degradation law in a file; 'order' also where the file leaves it out. */
export type LawKind = NonNullable<StoredLaw['kind']>;

/** Kind of a stored law. */
export const lawKind = (law: StoredLaw): LawKind => law.kind ?? 'order';

/** How well a material is known, prediction by prediction; see `completenessOf`. */
export const materialCompleteness = (material: Material): readonly TopicCompleteness[] => completenessOf(material);

const start = (value: number): Sourced => ({
  value,
  source: 'start value, a common order of magnitude; replace it with one of your own',
  status: 'estimated',
});

/** Rate and activation energy to go on with: those of the old law, or of its first step. */
function runOf(law: StoredLaw): { readonly rateAtReferencePerS: Sourced; readonly activationKJPerMol: Sourced } {
  const { rateAtReferencePerS, activationKJPerMol } = law.kind === 'twoStep' ? law.first : law;
  return { rateAtReferencePerS, activationKJPerMol };
}

/**
 * A law of another kind in place of a law: name, observed quantity, reference and range stay, and so do rate and
 * activation energy with their sources, though the rate may now count something else. The rest starts estimated.
 * @param law stored law
 * @param kind the new kind; the old one's gives the law back
 */
export function lawOfKind(law: StoredLaw, kind: LawKind): StoredLaw {
  if (lawKind(law) === kind) return law;
  const { id, observed, referenceC, validFromC, validToC } = law;
  const head = { id, observed, referenceC, validFromC, validToC };
  const run = runOf(law);
  switch (kind) {
    case 'order':
      return { ...head, ...run, order: 1 };
    case 'scission':
      return { ...head, ...run, kind, repeatUnitMassKgPerMol: start(0.1) };
    case 'twoStep':
      return { ...head, kind, first: { ...run, solidYield: start(0.8) }, second: { ...run, solidYield: start(0.4) } };
    case 'lag':
      return { ...head, ...run, kind, lagAtReferenceS: start(60) };
    default:
      return assertNever(kind);
  }
}

/** The material with the law at an index of another kind; see `lawOfKind`. */
export const withLawKind = (material: Material, index: number, kind: LawKind): Material => ({
  ...material,
  degradation: material.degradation.map((law, place) => (place === index ? lawOfKind(law, kind) : law)),
});

/**
 * The material with a law renamed; a colour that hung on it goes with it.
 * @param material stored material
 * @param index place of the law
 * @param id the new name; the material unchanged where it is empty, taken or the law is not there
 */
export function withLawId(material: Material, index: number, id: string): Material {
  const law = material.degradation[index];
  const taken = material.degradation.some((other, place) => place !== index && other.id === id);
  if (!law || id === '' || taken) return material;
  const degradation = material.degradation.map((other, place) => (place === index ? { ...other, id } : other));
  return { ...material, degradation, ...(material.colourLaw === law.id ? { colourLaw: id } : {}) };
}
