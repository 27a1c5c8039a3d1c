/** Colour of parts in series: distribution, indices, swatches. */

import { describe, expect, it } from 'vitest';
import { type Lab, labToXyz } from '../../../core/age/cielab.ts';
import { predictColourOfParts } from '../../../core/age/colour.ts';
import { colourOrigin } from '../../../core/age/colourOrigin.ts';
import { scaledParts } from '../../../core/age/colourParts.ts';
import { gamutNote, indicesOf } from '../../../core/age/colourReading.ts';
import { deltaE2000 } from '../../../core/age/deltaE2000.ts';
import { yellownessE313 } from '../../../core/age/indices.ts';
import { channelAtoms, pipeAtoms } from '../../../core/residence/channel.ts';
import { orderLaw, pale, part, seriesLaw } from './samples.ts';

const parts = [part(channelAtoms(200)), part(pipeAtoms(30, 0.5), 485)];
const got = predictColourOfParts(pale, parts);

describe('distribution', () => {
  it('rises over 0, 50, 90, 95, 99 % with colours of the path, its end the worst streak', () => {
    expect(got.distribution.map(({ share }) => share)).toEqual([0, 0.5, 0.9, 0.95, 0.99]);
    for (let i = 1; i < 5; i++) {
      expect(got.distribution[i].extent).toBeGreaterThan(got.distribution[i - 1].extent);
      expect(got.distribution[i].dE00).toBeGreaterThan(got.distribution[i - 1].dE00);
    }
    expect(got.distribution[4].extent).toBe(got.extentWorst);
    expect(got.distribution[4].srgb).toBe(got.srgbWorst);
    const { lab, dE00 } = got.distribution[2];
    expect(dE00).toBeCloseTo(deltaE2000([80, 4, 20], lab), 12);
  });

  it('says that parts are independent', () => {
    expect(got.basis.assumptions.join(' ')).toContain('independent');
    expect(predictColourOfParts(pale, [parts[0]]).basis.assumptions.join(' ')).not.toContain('independent');
  });
});

describe('limits', () => {
  it('infinite flow changes nothing', () => {
    const none = predictColourOfParts(pale, scaledParts(parts, 1e-9));
    expect(none.dE00Mean as number).toBeLessThan(1e-6);
    expect(none.dE00Worst as number).toBeLessThan(1e-6);
    expect(none.dE00Worst as number).toBeGreaterThan(0);
    expect(none.srgb).toBe(none.srgbFresh);
  });

  it('no parts: no residence times', () => {
    expect(predictColourOfParts(pale, [])).toMatchObject({ dE00Mean: null, laws: [] });
    expect(predictColourOfParts(pale, []).reason).toContain('no residence times');
  });
});

describe('indices', () => {
  it('are those of mean and worst, and warn in the dark', () => {
    expect(got.indices?.yellownessMean).toBe(yellownessE313(labToXyz(got.labMean as Lab)));
    expect(got.indices?.yellownessWorst as number).toBeGreaterThan(got.indices?.yellownessFresh as number);
    expect(got.indices?.note).not.toContain('do not compare');
    expect(indicesOf([80, 4, 20], [60, 8, 28], [25, 10, 12]).note).toContain('do not compare');
  });

  it('are null where they are not finite', () => {
    expect(indicesOf([80, 4, 20], [60, 8, 28], [0, 0, 0]).yellownessWorst).toBeNull();
  });
});

describe('swatches', () => {
  it('that the screen cannot show are named', () => {
    expect(got.gamutNote).toBeNull();
    expect(gamutNote([['the mean colour', [50, 120, 0]]])).toContain('the mean colour');
  });
});

describe('origin', () => {
  const passages = [
    { part: 'channel' as const, heat: [{ duration: 90, temperature: 473.15 }] },
    { part: 'nozzle' as const, heat: [{ duration: 10, temperature: 473.15 }] },
  ];

  it('of equal temperatures is the share of time, at any order', () => {
    for (const order of [0, 1, 2]) {
      const origin = colourOrigin(orderLaw(order), passages);
      expect(origin[0].share).toBeCloseTo(0.9, 9);
      expect(origin[1].share).toBeCloseTo(0.1, 9);
      expect(origin[0].temperature).toBeCloseTo(473.15, 9);
    }
  });

  it('of two steps in series adds up to 1 too', () => {
    const origin = colourOrigin(seriesLaw, passages);
    expect(origin[0].share + origin[1].share).toBeCloseTo(1, 12);
    expect(origin[0].share).toBeGreaterThan(0.8);
  });
});
