import { describe, expect, it } from 'vitest';
import { completenessOf } from '../../../core/material/completeness.ts';
import type { PredictionTopic } from '../../../core/material/completenessTypes.ts';
import { loadMaterial, materialNames } from '../../helpers/projects.ts';

const flowing: readonly PredictionTopic[] = ['melting', 'pumping', 'residence', 'colour', 'propertyLoss', 'strand'];
const states = (id: string) =>
  Object.fromEntries(completenessOf(loadMaterial(id)).map(({ topic, state }) => [topic, state]));
const topicOf = (id: string, topic: PredictionTopic) =>
  completenessOf(loadMaterial(id)).find((one) => one.topic === topic);

describe('the library', () => {
  it('has the eighteen materials, none of them invented', () => {
    expect(materialNames.toSorted()).toEqual(
      'abs hdpe isomalt ldpe pa12 pa6 pc pcl pet petg phb pla pla-wood-flour pp ps sucrose tpu wax'.split(' '),
    );
    for (const id of materialNames) expect(loadMaterial(id).invented, id).toBe(false);
  });

  it.each(materialNames)('%s: every doubt has a name, and feeding is never missing', (id) => {
    const all = completenessOf(loadMaterial(id));
    expect(all.map(({ topic }) => topic)).toHaveLength(8);
    for (const { state, missing, doubtful } of all) {
      expect(state).toBe(missing.length > 0 ? 'missing' : doubtful.length > 0 ? 'doubtful' : 'known');
    }
    expect(states(id).feeding).not.toBe('missing');
  });

  it.each(['pa12', 'petg', 'phb', 'tpu'])('%s: nothing that flows can be predicted, feeding and cracking can', (id) => {
    for (const topic of flowing) expect(topicOf(id, topic)?.missing, topic).toContain('viscosity');
    expect(states(id)).toMatchObject({ feeding: 'doubtful', cracking: 'doubtful' });
  });

  it('doubts of pumping PS, HDPE and PP only the density, worked out, and where the law holds, assumed', () => {
    for (const id of ['ps', 'hdpe', 'pp']) {
      expect(topicOf(id, 'pumping')?.doubtful, id).toEqual(
        expect.arrayContaining(['range of the viscosity law', 'melt density']),
      );
      expect(topicOf(id, 'pumping')?.doubtful, id).toHaveLength(2);
    }
  });

  it('tells colour from molar mass: wood has the one, PLA only the other, PS neither', () => {
    expect(states('pla-wood-flour').colour).toBe('doubtful');
    expect(states('pla')).toMatchObject({ colour: 'missing', propertyLoss: 'doubtful' });
    expect(topicOf('pla', 'colour')?.missing).toEqual(['rate law of the colour', 'colours at two extents or more']);
    expect(states('ps')).toMatchObject({ colour: 'missing', propertyLoss: 'missing' });
    expect(topicOf('sucrose', 'colour')?.missing).toContain('colours at two extents or more');
  });
});

describe('one value', () => {
  it('that is only remembered makes its prediction doubtful', () => {
    const ps = loadMaterial('ps');
    if (ps.rheologyRange) ps.rheologyRange.status = 'seen';
    ps.meltDensityKgM3.status = 'seen';
    const known = completenessOf(ps).find(({ topic }) => topic === 'pumping');
    expect(known).toEqual({ topic: 'pumping', state: 'known', missing: [], doubtful: [] });
    ps.meltDensityKgM3.status = 'from memory';
    const pumping = completenessOf(ps).find(({ topic }) => topic === 'pumping');
    expect(pumping).toEqual({ topic: 'pumping', state: 'doubtful', missing: [], doubtful: ['melt density'] });
  });

  it('that is left out is missing, or doubtful where it can be done without', () => {
    const { mechanical: _m, surfaceTensionNPerM: _s, rheologyRange: _r, ...ps } = loadMaterial('ps');
    const byTopic = Object.fromEntries(completenessOf(ps).map((one) => [one.topic, one]));
    expect(byTopic.cracking).toMatchObject({ state: 'missing' });
    expect(byTopic.strand?.doubtful).toContain('surface tension (not given)');
    expect(byTopic.pumping?.doubtful).toContain('range of the viscosity law (not given)');
  });
});
