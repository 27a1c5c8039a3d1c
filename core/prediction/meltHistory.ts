/** Times and local temperatures of the melt in channel, tip and nozzle, and of what dead spots hold. */

import { meanTemperature, type PartPassage } from '../age/colourOrigin.ts';
import type { AgedPart } from '../age/extentDistribution.ts';
import { durationOf, type HeatSegment } from '../age/lawRun.ts';
import type { SpotHistory } from '../age/spotBleed.ts';
import { reachVolumes } from '../path/channelTimes.ts';
import { shareCuts } from '../residence/atoms.ts';
import { convolvedCuts, curveAtoms } from '../residence/curveAtoms.ts';
import { type FlowState, flowingTemperature } from './flowState.ts';
import type { Machine } from './machine.ts';
import type { DeadSpot, Residence } from './types.ts';

/** A stretch of the channel, and where it ends, m. */
interface ChannelStretch extends HeatSegment {
  readonly end: number;
}

/** Reaches whose temperatures differ by less are joined, K: a rate constant changes by less than a tenth. */
const joinedWithin = 1;

/** Ages per part: few, yet percentiles of the convolved extents lie within 2 % of those of fine cuts; means are kept. */
const channelCuts = convolvedCuts(10, 20, 5);
const headCuts = convolvedCuts(8, 20, 4);
const wholeCuts = shareCuts(40, 40);

/** Channel along z: time by melt volume, temperature of each reach. @param mean time in the channel, s */
function channelStretches(machine: Machine, state: FlowState, mean: number): ChannelStretch[] {
  const volumes = reachVolumes(machine, state);
  const total = volumes.reduce((sum, volume) => sum + volume, 0);
  if (!(total > 0 && mean > 0)) return [];
  const { temperature } = state.melt;
  const { material } = machine.design;
  const stretches: ChannelStretch[] = [];
  let coolest = 0;
  let hottest = 0;
  volumes.forEach((volume, i) => {
    if (!(volume > 0)) return;
    const local = flowingTemperature(material, (temperature[i] + temperature[i + 1]) / 2);
    const duration = (mean * volume) / total;
    const end = machine.stations.z[i + 1];
    const last = stretches.at(-1);
    coolest = Math.min(coolest, local);
    hottest = Math.max(hottest, local);
    if (!last || hottest - coolest > joinedWithin) {
      [coolest, hottest] = [local, local];
      stretches.push({ duration, temperature: local, end });
      return;
    }
    const time = last.duration + duration;
    const weighed = (last.duration * last.temperature + duration * local) / time;
    stretches[stretches.length - 1] = { duration: time, temperature: weighed, end };
  });
  return stretches;
}

/** A passage through the machine with the place of each stretch of the channel. */
export interface MeltPassage extends PartPassage {
  readonly heat: readonly (HeatSegment & { readonly end?: number })[];
}

/** Mean passage of the melt, part by part in order of passing; parts that hold no melt are left out. */
export function meltPassages(machine: Machine, state: FlowState, residence: Residence): MeltPassage[] {
  const { material } = machine.design;
  const { count } = machine.stations;
  const tip = flowingTemperature(material, state.melt.temperature[count - 1]);
  const nozzle = flowingTemperature(material, machine.walls.nozzleTemperature);
  return residence.parts
    .filter(({ mean }) => mean > 0)
    .map(({ part, mean }) => {
      const head = [{ duration: mean, temperature: part === 'tip' ? tip : nozzle }];
      const own = part === 'channel' ? channelStretches(machine, state, mean) : head;
      return { part, heat: own.length > 0 ? own : [{ duration: mean, temperature: tip }] };
    });
}

/**
 * Parts with their own ages where the residence knows them, else the whole path as one.
 * @param passages of the same residence
 */
export function agedParts(passages: readonly MeltPassage[], residence: Residence): AgedPart[] {
  if (residence.time.length === 0) return [];
  if (!residence.partCurves) {
    const atoms = curveAtoms(residence.time, residence.cumulative, wholeCuts, residence.mean);
    return [{ part: 'whole path', atoms, heat: passages.flatMap(({ heat }) => heat) }];
  }
  return residence.partCurves.flatMap(({ part, time, cumulative }) => {
    const inChannel = part === 'channel';
    const heat = passages.filter((own) => (own.part === 'channel') === inChannel).flatMap((own) => own.heat);
    const mean = durationOf(heat);
    if (!(mean > 0)) return [];
    return [{ part, atoms: curveAtoms(time, cumulative, inChannel ? channelCuts : headCuts, mean), heat }];
  });
}

/**
 * What melt in a dead spot has been through: in the channel, corners hold it all the way from melting; in the head it
 * first passes what lies before.
 */
export function spotHistory(passages: readonly MeltPassage[], spot: Pick<DeadSpot, 'part' | 'z'>): SpotHistory {
  const own = passages.find(({ part }) => part === spot.part) ?? passages[passages.length - 1];
  if (own.part !== 'channel') {
    const before = passages.slice(0, passages.indexOf(own)).flatMap(({ heat }) => heat);
    return { before, within: [{ duration: 1, temperature: meanTemperature(own.heat) }] };
  }
  const upTo = own.heat.filter((_, i) => i === 0 || (own.heat[i - 1].end ?? 0) < spot.z);
  return { before: [], within: upTo };
}

/** Mean time and time-weighted temperature of channel, tip and nozzle, in order of passing. */
export const meltHeat = (machine: Machine, state: FlowState, residence: Residence): HeatSegment[] =>
  meltPassages(machine, state, residence).map(({ heat }) => ({
    duration: durationOf(heat),
    temperature: meanTemperature(heat),
  }));
