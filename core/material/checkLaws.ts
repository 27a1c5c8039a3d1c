/** Whether the degradation laws and the colours of a material make sense. */

import type { Material, StoredLaw } from '../project/materialSchema.ts';
import { inOrder, named, type Rule } from './checkTypes.ts';

const place = (index: number, ...rest: readonly string[]) => ['degradation', index, ...rest];

function positive(field: readonly (string | number)[], value: number): Rule {
  return {
    holds: value > 0,
    field: [...field, 'value'],
    code: 'not-positive',
    message: 'The activation energy must be positive: every such change runs faster when hot.',
    value: `${value} kJ/mol`,
    allowed: 'above 0 kJ/mol',
    remedy: 'Enter the activation energy of the change.',
  };
}

function activationRules(law: StoredLaw, index: number): readonly Rule[] {
  const field = 'activationKJPerMol';
  if (law.kind !== 'twoStep') return [positive(place(index, field), law[field].value)];
  return (['first', 'second'] as const).map((step) => positive(place(index, step, field), law[step][field].value));
}

function scissionRules(law: StoredLaw, index: number): readonly Rule[] {
  if (law.kind !== 'scission' || law.initialMolarMassKgPerMol === undefined) return [];
  const unit = named(
    place(index, 'repeatUnitMassKgPerMol'),
    'mass of a repeat unit',
    law.repeatUnitMassKgPerMol,
    'kg/mol',
  );
  const chain = named(
    place(index, 'initialMolarMassKgPerMol'),
    'molar mass of fresh chains',
    law.initialMolarMassKgPerMol,
    'kg/mol',
  );
  return [inOrder(unit, chain, false)];
}

function lawRules(law: StoredLaw, index: number, laws: readonly StoredLaw[]): readonly Rule[] {
  const at = (key: 'validFromC' | 'validToC', words: string) => ({
    field: place(index, key),
    words,
    value: law[key],
    unit: '°C',
  });
  const twin = laws.findIndex(({ id }) => id === law.id) < index;
  return [
    inOrder(at('validFromC', 'lowest temperature of the law'), at('validToC', 'highest temperature of the law'), true),
    ...activationRules(law, index),
    ...scissionRules(law, index),
    {
      holds: !twin,
      field: place(index, 'id'),
      code: 'duplicate-id',
      message: 'Another degradation law of this material has the same id.',
      value: law.id,
      allowed: 'an id of its own',
      remedy: 'Choose another id.',
    },
  ];
}

/** Whether the extent of a law is a share, 0 to 1. */
const isShare = (law: StoredLaw): boolean =>
  law.kind === 'twoStep' || law.kind === 'lag' || (law.kind !== 'scission' && law.order > 0);

/** Anchors beyond 1 for a law whose extent is a share would never be reached. */
function anchorRules({ degradation, colourLaw, colourAnchors }: Material): readonly Rule[] {
  const law = degradation.find(({ id }) => id === colourLaw);
  if (!law || !isShare(law)) return [];
  return colourAnchors.map(({ extent }, index) => ({
    holds: extent <= 1,
    field: ['colourAnchors', index, 'extent'],
    code: 'anchor-beyond-law',
    message: `The extent of the law ${law.id} is a share and never exceeds 1.`,
    value: String(extent),
    allowed: '0 to 1',
    remedy: 'Enter the extent as a share, or name another colour law.',
  }));
}

/** Every rule about laws and colours. */
export const kineticRules = (m: Material): readonly Rule[] => [...m.degradation.flatMap(lawRules), ...anchorRules(m)];
