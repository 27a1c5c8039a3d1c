/** The machine corrected by solved fields, and its working point: formulas first, fields then, until both agree. */

import type { DrivenPoint } from '../prediction/drivenPoint.ts';
import { drivenPoint } from '../prediction/drivenPoint.ts';
import type { Machine } from '../prediction/machine.ts';
import { type ChannelField, channelField, correctedChannel } from './channelField.ts';
import type { FieldCache } from './fieldCache.ts';
import { type HeadField, headField } from './headField.ts';

/** Told after each step: share done, 0 to 1. */
export type PathProgress = (done: number, stage: string) => void;

/** A machine that pumps as its solved fields do. */
export interface SolvedPath {
  readonly machine: Machine;
  readonly driven: DrivenPoint;
  readonly channel: ChannelField;
  /** null where the head could not be solved */
  readonly head: HeadField | null;
  readonly doubts: readonly string[];
  /** false where a field or the agreement of flow and fields did not converge */
  readonly converged: boolean;
}

/** Change of flow that ends the exchange between working point and fields. */
const settled = 2e-3;

/** Most exchanges; each changes the flow some ten times less than the one before, save where the drive stalls. */
const mostPasses = 8;

/** Exchanges after which corrections go only half-way, so that two states cannot take turns. */
const freePasses = 2;

type Factors = ChannelField['factors'];

/** Half-way from the factors before to the new ones. */
function halfWay(before: Factors, factors: Factors): Factors {
  return factors.map((own, i) => {
    const last = before[i];
    if (!own || !last) return own;
    const middle = (of: keyof typeof own) => (own[of] + last[of]) / 2;
    return { drag: middle('drag'), pressure: middle('pressure'), power: middle('power') };
  });
}

/** Machine with the factors of solved fields. */
function corrected(machine: Machine, factors: Factors, head: HeadField | null): Machine {
  return {
    ...machine,
    channel: correctedChannel(machine.channel, factors),
    head: { ...machine.head, pressureFactor: head?.pressureFactor ?? 1 },
  };
}

/**
 * Solves channel and head at the working point of the formulas, corrects the formulas, finds the working point again.
 * @param machine uncorrected
 * @param first its working point
 * @param cache takes what is solved
 * @returns null where nothing flows: there is no field to solve
 */
export function solvedPath(
  machine: Machine,
  first: DrivenPoint,
  cache: FieldCache,
  progress?: PathProgress,
): SolvedPath | null {
  if (!(first.point.volumeFlow > 0)) return null;
  let found: SolvedPath | null = null;
  let driven = first;
  let factors: Factors = [];
  for (let pass = 0; pass < mostPasses; pass++) {
    const { state } = driven.point;
    const share = (done: number) => (pass + done) / (pass + 2);
    const channel = channelField(machine, state, cache, (done) => progress?.(share(done / 2), 'channel field'));
    progress?.(share(0.5), 'tip and nozzle field');
    const solved = headField(machine, state, cache, found?.head?.point);
    const head = 'field' in solved ? solved : null;
    factors = pass < freePasses ? channel.factors : halfWay(factors, channel.factors);
    const next = corrected(machine, factors, head);
    const again = drivenPoint(next, driven.point.memory);
    const change = Math.abs(again.point.volumeFlow - driven.point.volumeFlow) / driven.point.volumeFlow;
    const agreed = change < settled;
    found = {
      machine: next,
      driven: again,
      channel,
      head,
      doubts: 'why' in solved ? [`Tip and nozzle are not solved: ${solved.why}`] : [],
      converged: agreed && channel.converged && (head?.converged ?? true),
    };
    driven = again;
    if (agreed || !(again.point.volumeFlow > 0)) break;
  }
  return found;
}
