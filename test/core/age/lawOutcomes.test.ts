/** What every law comes to, and molar mass where there is no colour. */

import { describe, expect, it } from 'vitest';
import { predictColourOfParts } from '../../../core/age/colour.ts';
import { molarMassAfter } from '../../../core/age/kinetics.ts';
import { lawOutcomes, molarMassLoss } from '../../../core/age/lawOutcomes.ts';
import type { LagLaw } from '../../../core/material/kineticLaws.ts';
import { plugAtoms } from '../../helpers/plugAtoms.ts';
import { exact, orderLaw, pale, part, scissionLaw, seriesLaw, tankAtoms } from './samples.ts';

const lag: LagLaw = {
  kind: 'lag',
  id: 'lag',
  observed: 'browning',
  referenceTemperature: 473.15,
  validFrom: 400,
  validTo: 420,
  rateAtReference: exact(0.01),
  activation: exact(80e3),
  lagAtReference: 50,
};

describe('molar mass', () => {
  it('is that of the scission law for mean and worst extent, shares and thinning with it', () => {
    const loss = molarMassLoss(scissionLaw(1e-6, 100), 2e-4, 7e-4);
    expect(loss.mean).toBeCloseTo(molarMassAfter(100, 0.072, 2e-4), 12);
    expect(loss.worst).toBeCloseTo(1 / (1 / 100 + 7e-4 / 0.072), 12);
    expect(loss.shareMean).toBeCloseTo(1 / (1 + (2e-4 * 100) / 0.072), 12);
    expect(loss.viscosityMean).toBeCloseTo((loss.shareMean as number) ** 3.4, 12);
  });

  it('tells which fresh molar mass would be halved where the fresh one is not known', () => {
    const loss = molarMassLoss(scissionLaw(1e-6), 2e-4, 7e-4);
    expect([loss.initial, loss.mean, loss.shareWorst, loss.viscosityWorst]).toEqual([null, null, null, null]);
    const halved = loss.halvesWorst as number;
    expect(molarMassAfter(halved, 0.072, 7e-4)).toBeCloseTo(halved / 2, 9);
    expect(molarMassLoss(scissionLaw(0), 0, 0).halvesMean).toBeNull();
  });

  it('averages as number of chains: the mean of 1/M over the ages', () => {
    const atoms = tankAtoms(400);
    const [outcome] = lawOutcomes({ ...pale, degradation: [scissionLaw(1e-6, 100)] }, [part(atoms)]);
    const inverse = atoms.time.reduce(
      (sum, time, i) => sum + atoms.share[i] / molarMassAfter(100, 0.072, 1e-6 * time),
      0,
    );
    expect(outcome.molarMass?.mean).toBeCloseTo(1 / inverse, 9);
  });
});

describe('several laws', () => {
  const material = { ...pale, degradation: [orderLaw(0), scissionLaw(1e-6, 100), seriesLaw, lag, orderLaw(1)] };
  const outcomes = lawOutcomes(material, [part(plugAtoms(100))]);

  it('are all told; one drives the colour', () => {
    expect(outcomes.map(({ kind }) => kind)).toEqual(['order', 'scission', 'twoStep', 'lag', 'order']);
    expect(outcomes.filter(({ drivesColour }) => drivesColour).map(({ id }) => id)).toEqual(['order 0']);
    expect(outcomes[0].extentMean).toBeCloseTo(1, 9);
    expect(outcomes[4].extentMean).toBeCloseTo(1 - Math.exp(-1), 9);
  });

  it('say in words what they mean, and where they are asked outside', () => {
    expect(outcomes[0].means).toContain('Reaches 1');
    expect(outcomes[1].means).toMatch(/Molar mass.*88 %.*from memory.*brittle/);
    expect(outcomes[2].means).toContain('Solid mass lost');
    expect(outcomes[3].means).toContain('full course');
    expect(outcomes[4].means).toContain('Used up: 63 %');
    expect(outcomes[3].outside).toContain('extrapolated');
    expect(outcomes[0].outside).toBeNull();
  });
});

describe('a material of which only the molar mass is known', () => {
  it('has no colour but its loss', () => {
    const plain = { ...pale, degradation: [scissionLaw(1e-6, 100)], colourLaw: null, colourAnchors: [] };
    const got = predictColourOfParts(plain, [part(plugAtoms(500))]);
    expect(got.dE00Mean).toBeNull();
    expect(got.reason).toContain('only the loss of molar mass is known');
    expect(got.laws[0].molarMass?.shareMean).toBeCloseTo(1 / (1 + (5e-4 * 100) / 0.072), 9);
    expect([got.distribution, got.bleed, got.origin, got.indices]).toEqual([[], [], [], null]);
  });
});
