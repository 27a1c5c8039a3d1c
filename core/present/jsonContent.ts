/** Feeding, melting, throat, warming up and the curve over speed in the machine-readable verdict. */

import type { Basis, Prediction } from '../prediction/types.ts';

import { orNull, rounded, shown } from './shown.ts';

type Maybe = number | null;

/** Granules between hopper and melt. */
export interface FeedingJson {
  readonly hopperDischarge_g_min: number;
  readonly outletRatio: number;
  readonly outletRatioWanted: number;
  readonly cohesiveOutlet_mm: number;
  readonly hopperFlow: string;
  readonly throatPressure_Pa: number;
  readonly limitedBy: string;
  /** what a plug would carry at nominal, low and high friction */
  readonly plugFree_g_min: { readonly nominal: number; readonly low: number; readonly high: number };
  readonly buildable_MPa: number;
  readonly holds: boolean;
  readonly basis: Basis;
}

/** Melting; places along z, null where beyond the screw. */
export interface MeltingJson {
  readonly softensAt_mm: Maybe;
  readonly meltsFrom_mm: Maybe;
  readonly moltenAt_mm: { readonly suited: Maybe; readonly conduction: Maybe; readonly film: Maybe };
  readonly flightInMelt_mm: number;
  readonly unmeltedAtLastFlight: number;
  readonly filmLength_mm: number;
  readonly basis: Basis;
}

/** The throat in one state of the machine. */
interface ThroatJson {
  readonly margin_K: number;
  readonly wall_C: number;
  readonly core_C: number;
  readonly granules_C: number;
  readonly creepWall_W: number;
  readonly creepCore_W: number;
}

/** Throat, running and standing hot. */
export interface ColdEndJson {
  readonly running: ThroatJson;
  readonly standing: ThroatJson;
  readonly basis: Basis;
}

/** Warming up from cold; null times never come. */
export interface WarmUpJson {
  readonly ready_s: Maybe;
  readonly mayTurn_s: Maybe;
  readonly energy_Wh: number;
  readonly heaters: readonly { readonly name: string; readonly ready_s: Maybe; readonly meanPower_W: number }[];
  readonly basis: Basis;
}

/** Capacities over screw speed; null where one does not bind. */
export interface CurveJson {
  readonly screwSpeed_rpm: readonly number[];
  readonly output_mm3_s: readonly number[];
  readonly pumping_mm3_s: readonly Maybe[];
  readonly feed_mm3_s: readonly Maybe[];
  readonly melting_mm3_s: readonly Maybe[];
  readonly heater_mm3_s: readonly Maybe[];
  readonly torque_mm3_s: readonly Maybe[];
  readonly headPressure_MPa: readonly number[];
  readonly torque_Nm: readonly number[];
  readonly torqueAvailable_Nm: readonly number[];
  readonly limit: readonly string[];
  readonly works: readonly boolean[];
}

/** What a verdict says of granules, melting, throat, warming up and speed. */
export interface ContentJson {
  readonly feeding: FeedingJson;
  readonly melting: MeltingJson;
  readonly coldEnd: ColdEndJson;
  readonly warmUp: WarmUpJson | null;
  readonly curve: CurveJson;
}

const mm = (value: number): number => shown(value, 'mm');
const flow = (value: number): number => shown(value, 'mm³/s');

/** All of them, in shown units. */
export const contentJson = (prediction: Prediction): ContentJson => ({
  feeding: feedingJson(prediction),
  melting: meltingJson(prediction),
  coldEnd: coldEndJson(prediction),
  warmUp: warmUpJson(prediction),
  curve: curveJson(prediction),
});

function feedingJson({ solids }: Prediction): FeedingJson {
  const { hopper, nominal, low, high } = solids;
  const rate = (value: number) => shown(value, 'g/min');
  return {
    hopperDischarge_g_min: rate(hopper.discharge),
    outletRatio: rounded(hopper.outletRatio),
    outletRatioWanted: rounded(hopper.outletRatioWanted),
    cohesiveOutlet_mm: mm(hopper.cohesive.outlet),
    hopperFlow: hopper.flow.kind,
    throatPressure_Pa: rounded(hopper.throatPressure),
    limitedBy: solids.limitedBy,
    plugFree_g_min: { nominal: rate(nominal.freeFlow), low: rate(low.freeFlow), high: rate(high.freeFlow) },
    buildable_MPa: shown(nominal.buildable, 'MPa'),
    holds: solids.holds,
    basis: solids.basis,
  };
}

function meltingJson({ melting: m }: Prediction): MeltingJson {
  const { ends, engagement } = m;
  return {
    softensAt_mm: orNull(m.softensAt, mm),
    meltsFrom_mm: orNull(m.meltsFrom, mm),
    moltenAt_mm: {
      suited: orNull(ends.suited, mm),
      conduction: orNull(ends.conduction, mm),
      film: orNull(ends.film, mm),
    },
    flightInMelt_mm: mm(engagement.beyond),
    unmeltedAtLastFlight: rounded(engagement.unmelted),
    filmLength_mm: mm(m.filmLength),
    basis: m.basis,
  };
}

function coldEndJson({ coldEnd }: Prediction): ColdEndJson {
  const state = (name: 'running' | 'standing'): ThroatJson => {
    const { margin, wall, core, granules, coldEnd: creep } = coldEnd[name];
    return {
      margin_K: rounded(margin),
      wall_C: shown(wall, '°C'),
      core_C: shown(core, '°C'),
      granules_C: shown(granules, '°C'),
      creepWall_W: rounded(creep.wall),
      creepCore_W: rounded(creep.core),
    };
  };
  return { running: state('running'), standing: state('standing'), basis: coldEnd.basis };
}

function warmUpJson({ warmUp }: Prediction): WarmUpJson | null {
  return warmUp === null
    ? null
    : {
        ready_s: orNull(warmUp.ready),
        mayTurn_s: orNull(warmUp.mayTurn),
        energy_Wh: shown(warmUp.energy, 'W·h'),
        heaters: warmUp.heaters.map(({ name, readyAfter, meanPower }) => ({
          name,
          ready_s: orNull(readyAfter),
          meanPower_W: rounded(meanPower),
        })),
        basis: warmUp.basis,
      };
}

function curveJson({ curve }: Prediction): CurveJson {
  const all = <T>(values: Float64Array, show: (value: number) => T): T[] => Array.from(values, show);
  const bound = (value: number) => orNull(value, flow);
  return {
    screwSpeed_rpm: all(curve.screwSpeed, (value) => shown(value, 'rpm')),
    output_mm3_s: all(curve.volumeFlow, flow),
    pumping_mm3_s: all(curve.pumping, bound),
    feed_mm3_s: all(curve.feed, bound),
    melting_mm3_s: all(curve.melting, bound),
    heater_mm3_s: all(curve.heater, bound),
    torque_mm3_s: all(curve.torqueBound, bound),
    headPressure_MPa: all(curve.headPressure, (value) => shown(value, 'MPa')),
    torque_Nm: all(curve.torque, rounded),
    torqueAvailable_Nm: all(curve.torqueAvailable, rounded),
    limit: curve.limit,
    works: Array.from(curve.works, (value) => value === 1),
  };
}
