import { describe, expect, it } from 'vitest';
import { designMaterial } from '../../../core/material/designMaterial.ts';
import { lawKind, lawOfKind, materialCompleteness, withLawId, withLawKind } from '../../../core/project/editLaws.ts';
import { materialSchema } from '../../../core/project/materialSchema.ts';
import { expectOk, loadMaterial } from '../../helpers/projects.ts';

const kinds = ['order', 'scission', 'twoStep', 'lag'] as const;
const wood = loadMaterial('pla-wood-flour');

describe('a law of another kind', () => {
  it.each(kinds)('%s: from every law a good file, in SI of that kind', (kind) => {
    wood.degradation.forEach((law, index) => {
      const changed = withLawKind({ ...wood, colourAnchors: [] }, index, kind);
      expect(materialSchema.safeParse(changed).error).toBeUndefined();
      const made = expectOk(designMaterial(changed)).degradation[index];
      expect(made && 'kind' in made ? made.kind : 'order').toBe(kind);
      expect(made).toMatchObject({ id: law.id, observed: law.observed });
    });
  });

  it('keeps rate and activation energy with their sources and starts the rest estimated', () => {
    const [, two, scission] = wood.degradation;
    if (two?.kind !== 'twoStep' || scission?.kind !== 'scission') throw new Error('laws have moved');
    const lag = lawOfKind(scission, 'lag');
    expect(lag).toMatchObject({
      rateAtReferencePerS: scission.rateAtReferencePerS,
      activationKJPerMol: scission.activationKJPerMol,
      lagAtReferenceS: { status: 'estimated' },
    });
    expect(lawOfKind(two, 'order')).toMatchObject({ rateAtReferencePerS: two.first.rateAtReferencePerS, order: 1 });
    expect(lawOfKind(two, 'twoStep')).toBe(two);
    expect(wood.degradation.map(lawKind)).toEqual(['order', 'twoStep', 'scission']);
  });
});

describe('a new name', () => {
  it('takes the colour along', () => {
    const renamed = withLawId(wood, 0, 'darkening');
    expect(renamed.degradation[0]?.id).toBe('darkening');
    expect(renamed.colourLaw).toBe('darkening');
    expect(withLawId(wood, 1, 'loss').colourLaw).toBe('wood-delta-e');
  });

  it('that is empty or taken changes nothing', () => {
    expect(withLawId(wood, 0, '')).toBe(wood);
    expect(withLawId(wood, 0, 'wood-mass-loss')).toBe(wood);
    expect(withLawId(wood, 9, 'new')).toBe(wood);
  });
});

it('what is known of a material comes by the same door', () => {
  expect(materialCompleteness(wood)).toHaveLength(8);
});
