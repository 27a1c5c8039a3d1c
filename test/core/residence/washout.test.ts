/** Washing out against plug flow, stirred tank and laminar pipe. */

import { describe, expect, it } from 'vitest';
import { shareCuts } from '../../../core/residence/atoms.ts';
import { channelAtoms, pipeAtoms } from '../../../core/residence/channel.ts';
import { joinResidence } from '../../../core/residence/combine.ts';
import { convolvedCuts, curveAtoms } from '../../../core/residence/curveAtoms.ts';
import { knownShare, timeToOldShare } from '../../../core/residence/washout.ts';
import { plugAtoms } from '../../helpers/plugAtoms.ts';

const curve = (time: readonly number[], cumulative: readonly number[]) => ({
  time: Float64Array.from(time),
  cumulative: Float64Array.from(cumulative),
});
/** F = 1 - exp(-t/tau), cut at a share. */
function tank(mean: number, cut = 1 - 1e-5) {
  const shares = Array.from({ length: 2001 }, (_, i) => cut * (1 - (1 - i / 2000) ** 3));
  return curve(
    shares.map((share) => -mean * Math.log(1 - share)),
    shares,
  );
}

describe('share of old melt', () => {
  it('plug flow: all until the mean, nothing after', () => {
    const plug = joinResidence([plugAtoms(40)]);
    expect(timeToOldShare(plug, 0.99)).toBe(40);
    expect(timeToOldShare(plug, 0.01)).toBe(40);
    expect(knownShare(plug)).toBe(1);
  });

  it('stirred tank: exp(-t/tau), so 99 % after 4.605 tau and 99.9 % after 6.908 tau', () => {
    const stirred = tank(20);
    expect(timeToOldShare(stirred, Math.exp(-1.5))).toBeCloseTo(30, 3);
    expect(timeToOldShare(stirred, 0.01)).toBeCloseTo(20 * Math.log(100), 3);
    expect(timeToOldShare(stirred, 0.001)).toBeCloseTo(20 * Math.log(1000), 2);
  });

  /** Levenspiel 1999: F = 1 - 1/(4 theta²), so theta = 1/(2 sqrt(w)): 15.81 at 0.1 %. */
  it('laminar pipe: 15.81 tau', () => {
    const pipe = joinResidence([pipeAtoms(10, 1)]);
    expect((timeToOldShare(pipe, 0.001) as number) / 158.1).toBeCloseTo(1, 1);
  });

  it('says null beyond what is known, never an end value', () => {
    const cut = tank(20, 0.99);
    expect(knownShare(cut)).toBeCloseTo(0.99, 6);
    expect(timeToOldShare(cut, 0.011)).not.toBeNull();
    expect(timeToOldShare(cut, 0.009)).toBeNull();
    expect(timeToOldShare(curve([], []), 0.5)).toBeNull();
    // an unresolved last step, as a last bin leaves it
    expect(knownShare(curve([1, 5, 5], [0, 0.98, 1]))).toBe(0.98);
    // whole machines are cut at a millionth
    const machine = joinResidence([channelAtoms(60), pipeAtoms(8, 0.5)]);
    expect(knownShare(machine)).toBeGreaterThan(1 - 3e-6);
    expect(timeToOldShare(machine, 1e-7)).toBeNull();
  });
});

describe('atoms of a curve', () => {
  it('keep the mean of the curve, and a stated mean exactly', () => {
    const stirred = tank(20);
    const cuts = shareCuts(16, 20);
    const mean = (atoms: ReturnType<typeof curveAtoms>) =>
      atoms.time.reduce((sum, time, i) => sum + time * atoms.share[i], 0);
    expect(mean(curveAtoms(stirred.time, stirred.cumulative, cuts))).toBeCloseTo(20, 2);
    expect(mean(curveAtoms(stirred.time, stirred.cumulative, cuts, 20))).toBeCloseTo(20, 12);
  });

  it('of an exponential have the exact mean of each share', () => {
    const stirred = tank(1);
    const { time, share } = curveAtoms(stirred.time, stirred.cumulative, [0, 0.5, 0.9, 1]);
    // integral of -ln(1 - F) dF over the share, over the share
    const inner = (y: number) => y - y * Math.log(y);
    expect(time[0]).toBeCloseTo((inner(1) - inner(0.5)) / 0.5, 4);
    expect(time[1]).toBeCloseTo((inner(0.5) - inner(0.1)) / 0.4, 4);
    expect([...share].reduce((sum, own) => sum + own, 0)).toBeCloseTo(1, 12);
  });

  it('cuts for convolution rise from 0 to 1 and pass 0.8 and 0.999', () => {
    const cuts = convolvedCuts(8, 14, 4);
    expect([cuts[0], cuts[8], cuts.at(-1)]).toEqual([0, expect.closeTo(0.8, 12), 1]);
    expect(cuts[22]).toBeCloseTo(0.999, 12);
    for (let i = 1; i < cuts.length; i++) expect(cuts[i]).toBeGreaterThan(cuts[i - 1]);
  });

  it('of plug flow are plug flow', () => {
    const plug = joinResidence([plugAtoms(7)]);
    const { time, shortest } = curveAtoms(plug.time, plug.cumulative, [0, 0.2, 0.9, 1], 7);
    expect([...time, shortest].every((t) => Math.abs(t - 7) < 1e-12)).toBe(true);
  });
});
