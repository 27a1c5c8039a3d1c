/** Times and local temperatures of a whole machine, and its colour from them. */

import { describe, expect, it } from 'vitest';
import { rateConstant } from '../../../core/age/arrhenius.ts';
import { extentDistribution } from '../../../core/age/extentDistribution.ts';
import { durationOf } from '../../../core/age/lawRun.ts';
import { nominalCorner } from '../../../core/age/laws.ts';
import { reachVolumes } from '../../../core/path/channelTimes.ts';
import { colourAtFlow, colourStage } from '../../../core/prediction/colourStage.ts';
import { drivenPoint } from '../../../core/prediction/drivenPoint.ts';
import type { PartCurve } from '../../../core/prediction/dwellTypes.ts';
import { createMachine } from '../../../core/prediction/machine.ts';
import { agedParts, meltHeat, meltPassages, spotHistory } from '../../../core/prediction/meltHistory.ts';
import type { DeadSpot, Residence } from '../../../core/prediction/types.ts';
import { channelAtoms, pipeAtoms } from '../../../core/residence/channel.ts';
import { joinResidence } from '../../../core/residence/combine.ts';
import { loadDesign } from '../../helpers/projects.ts';
import { orderLaw } from './samples.ts';

const design = loadDesign('demo', 'C');
const machine = createMachine(design, 8);
const { state } = drivenPoint(machine).point;
const means = { channel: 70, tip: 9, nozzle: 3 } as const;
const parts = (['channel', 'tip', 'nozzle'] as const).map((part) => ({
  part,
  mean: means[part],
  volume: means[part] * state.volumeFlow,
}));
const atoms = [channelAtoms(70), pipeAtoms(12, 0.4)];
const joined = joinResidence(atoms);
const base: Residence = { ...joined, washout99: joined.t99, washout999: 3 * joined.t99, parts };
const partCurves: PartCurve[] = atoms.map((own, i) => ({
  part: i === 0 ? 'channel' : 'tip and nozzle',
  ...joinResidence([own]),
}));
const residence: Residence = { ...base, partCurves };
const passages = meltPassages(machine, state, residence);
/** Extent = time at 470 K. */
const clock = orderLaw(0, 1);

describe('mean passage', () => {
  it('takes the mean time of each part, in order', () => {
    expect(passages.map(({ part }) => part)).toEqual(['channel', 'tip', 'nozzle']);
    for (const { part, heat } of passages) expect(durationOf(heat)).toBeCloseTo(means[part], 9);
    expect(meltHeat(machine, state, residence).map(({ duration }) => Math.round(duration))).toEqual([70, 9, 3]);
  });

  it('follows the temperature along z, joined where it hardly changes', () => {
    const [channel] = passages;
    expect(channel.heat.length).toBeGreaterThan(5);
    expect(channel.heat.length).toBeLessThan(machine.stations.count);
    const temperatures = channel.heat.map(({ temperature }) => temperature);
    expect(Math.max(...temperatures) - Math.min(...temperatures)).toBeGreaterThan(10);
  });

  it('of an Arrhenius rate gives the integral over all stations', () => {
    const volumes = reachVolumes(machine, state);
    const total = volumes.reduce((sum, volume) => sum + volume, 0);
    const rate = (temperature: number) => rateConstant(1, 77e3, 473.15, temperature);
    const { temperature } = state.melt;
    const fine = volumes.reduce(
      (sum, volume, i) =>
        volume > 0 ? sum + (70 * volume * rate((temperature[i] + temperature[i + 1]) / 2)) / total : sum,
      0,
    );
    const coarse = passages[0].heat.reduce((sum, own) => sum + own.duration * rate(own.temperature), 0);
    expect(Math.abs(coarse / fine - 1)).toBeLessThan(1e-3);
  });
});

describe('parts', () => {
  it('are two where the residence knows them apart, else one, with the same mean', () => {
    const mean = (aged: ReturnType<typeof agedParts>) =>
      aged.reduce((sum, own) => sum + own.atoms.time.reduce((s, time, i) => s + time * own.atoms.share[i], 0), 0);
    const [two, one] = [agedParts(passages, residence), agedParts(passages, base)];
    expect(two.map(({ part }) => part)).toEqual(['channel', 'tip and nozzle']);
    expect(one).toHaveLength(1);
    expect(mean(two)).toBeCloseTo(82, 9);
    expect(mean(one)).toBeCloseTo(82, 1);
  });

  it.each([
    [70, 12],
    [30, 40],
    [90, 3],
  ])('of %d and %d s have the percentiles of the finely joined path', (channel, head) => {
    const fine = joinResidence([channelAtoms(channel), pipeAtoms(head, 0.4)]);
    const own = (['channel', 'tip', 'nozzle'] as const).map((part) => ({
      part,
      mean: part === 'channel' ? channel : head / 2,
      volume: 1e-6,
    }));
    const curves: PartCurve[] = [
      { part: 'channel', ...joinResidence([channelAtoms(channel)]) },
      { part: 'tip and nozzle', ...joinResidence([pipeAtoms(head, 0.4)]) },
    ];
    const two = agedParts(
      passages.map((passage, i) => ({ ...passage, heat: [{ duration: own[i].mean, temperature: 470 }] })),
      {
        ...base,
        parts: own,
        partCurves: curves,
      },
    );
    const law = { ...clock, referenceTemperature: 470 };
    const got = extentDistribution(law, two, nominalCorner);
    for (const [share, time] of [
      [0.5, fine.t50],
      [0.95, fine.t95],
      [0.99, fine.t99],
    ])
      expect(Math.abs(got.at(share) / time - 1)).toBeLessThan(0.02);
  });

  it('are none where nothing flows', () => {
    const empty = { ...base, time: new Float64Array(), cumulative: new Float64Array() };
    expect(agedParts(passages, empty)).toEqual([]);
    expect(colourStage(machine, state, empty).reason).toContain('no residence times');
  });
});

describe('colour', () => {
  const spot = (part: DeadSpot['part'], z: number, meanAge: number): DeadSpot => ({
    ...{ part, z, r: 0.005, zFrom: z, zTo: z, where: 'made up', cause: 'corner', remedy: 'none' },
    ...{ volume: 2e-8, meanAge },
  });
  const end = machine.stations.z[machine.stations.count - 1];
  const spots = [spot('channel', 0.8 * end, 700), spot('tip', end, 400)];
  const colour = colourStage(machine, state, residence, spots);

  it('its mean extent is k times mean time summed over the local temperatures (zero order)', () => {
    const law = design.material.degradation.find(({ id }) => id === design.material.colourLaw);
    if (!law || 'kind' in law) throw new Error('the demo has a colour law by order');
    const sum = passages
      .flatMap(({ heat }) => heat)
      .reduce(
        (total, { duration, temperature }) =>
          total +
          duration *
            rateConstant(law.rateAtReference.value, law.activation.value, law.referenceTemperature, temperature),
        0,
      );
    expect((colour.extentMean as number) / sum).toBeCloseTo(1, 9);
  });

  it('the joined path gives nearly the colour of its parts', () => {
    const joinedColour = colourStage(machine, state, base);
    expect(Math.abs((joinedColour.dE00Mean as number) / (colour.dE00Mean as number) - 1)).toBeLessThan(0.02);
    expect(Math.abs((joinedColour.dE00Worst as number) / (colour.dE00Worst as number) - 1)).toBeLessThan(0.15);
  });

  it('comes from parts whose shares add up to 1, hot ones counting more than their time', () => {
    expect(colour.origin.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
    const [channel, , nozzle] = colour.origin;
    expect(nozzle.temperature).toBeGreaterThan(channel.temperature);
    expect(nozzle.share / channel.share).toBeGreaterThan(nozzle.time / channel.time);
  });

  it('names what spots bleed: the tip’s counts the channel’s passage first', () => {
    const [channel, tip] = ['channel', 'tip'].map((part) => colour.bleed.find((own) => own.part === part));
    expect(channel?.held).toBeCloseTo(700, 6);
    expect(tip?.held).toBeCloseTo(330, 6);
    for (const own of colour.bleed) expect(own.share * own.held * state.volumeFlow).toBeCloseTo(2e-8, 16);
    expect(colour.basis.assumptions.join(' ')).toContain('stirred pocket');
    expect(colourStage(machine, state, residence).bleed).toEqual([]);
  });

  it('a spot of the channel knows the temperatures up to its place only', () => {
    const early = spotHistory(passages, spot('channel', 0, 1)).within;
    const late = spotHistory(passages, spot('channel', end, 1)).within;
    expect(early).toHaveLength(1);
    expect(late).toHaveLength(passages[0].heat.length);
  });

  it('at half the flow is that of twice the times', () => {
    const slow = colourAtFlow(machine, state, residence, 2);
    expect(slow?.dE00Mean as number).toBeGreaterThan(1.8 * (colour.dE00Mean as number));
    expect(colourAtFlow(machine, state, residence, 1)?.dE00Mean).toBeCloseTo(colour.dE00Mean as number, 12);
  });
});
