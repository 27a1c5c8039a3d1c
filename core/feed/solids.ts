/** The granules between feed opening and melt: pressure, filling, torque and heat at a given flow. */

import type { Design } from '../design/types.ts';
import type { Stations } from '../geometry/types.ts';
import { ownWeight, throatPressure } from './bin.ts';
import { type FeedPlace, feedCapacity } from './capacity.ts';
import { troughFilling } from './conveyor.ts';
import { depthOverGrain } from './grainFit.ts';
import { advanceOfAngle, balanceAngle, plugBalance } from './plug.ts';
import {
  type FrictionPair,
  frictionPairs,
  plugPressureLimit,
  plugWay,
  type SolidsSpan,
  solidsSpan,
} from './plugWay.ts';
import { type PackedState, packedState, type Supply } from './solidsPacking.ts';
import { solidsPower } from './solidsPower.ts';
import { backedUp, offeredRate } from './solidsSupply.ts';
import type { FeedLimit, SolidsAtFriction, SolidsOptions, SolidsState } from './solidsTypes.ts';

/** All that one evaluation works on. */
interface Task {
  readonly design: Design;
  readonly stations: Stations;
  readonly place: FeedPlace;
  readonly massFlow: number;
  readonly screwSpeed: number;
  readonly span: SolidsSpan;
  readonly options: SolidsOptions;
}

/** One evaluation at one pair of friction coefficients. */
interface Evaluation {
  readonly figures: SolidsAtFriction;
  readonly packed: PackedState;
  readonly heat: Float64Array;
  readonly angle: number;
  readonly freeAngle: number;
}

/** Which of feeder, hopper and screw gives the least. */
function limitOf(design: Design, place: FeedPlace, screwSpeed: number): { limit: FeedLimit; supply: number } {
  const { intake, trough } = feedCapacity(design, place, screwSpeed);
  const supply = offeredRate(design);
  if (intake <= supply) return { limit: trough ? 'trough' : 'plug', supply };
  return { limit: supply === design.process.starvedRate ? 'feeder' : 'hopper', supply };
}

function evaluate(task: Task, supply: Supply, friction: FrictionPair): Evaluation {
  const { design, stations, place, span, massFlow, screwSpeed, options } = task;
  const way = plugWay(design, stations, span, massFlow, screwSpeed, friction);
  const limit = plugPressureLimit(design.material, friction.onBarrel);
  const { k, drag, tanBarrel } = plugBalance(place.plug, friction.onBarrel, friction.onScrew);
  const freeAngle = balanceAngle(k, drag);
  const free = freeAngle > 0 ? advanceOfAngle(freeAngle, tanBarrel) : 0;
  const full = design.material.bulkDensity * place.volumePerTurn * screwSpeed;
  // friction that carries no plug at this flow leaves the granules to tumble along as in a trough
  const loose = { ...supply, tumbles: free < troughFilling && massFlow > free * full };
  const packed = packedState(stations, span, way, loose, limit, options.meltPressure);
  const { torque, heat } = solidsPower({ ...task, friction }, way, packed);
  return {
    figures: { freeFlow: free * full, buildable: packed.buildable, torque },
    packed,
    heat,
    angle: way.angle[Math.max(span.first, Math.min(place.station, span.last))],
    freeAngle,
  };
}

/** The hopper presses where granules back up to it; loose ones weigh only themselves. */
function suppliedBy(design: Design, place: FeedPlace, flooded: boolean): Supply {
  const weight = ownWeight(design.material, place.depth);
  return { flooded, pressure: flooded ? Math.max(weight, throatPressure(design)) : weight, tumbles: false };
}

/**
 * State of the granules at a flow.
 * @param place from feedPlace; null gives the empty state
 * @param massFlow kg/s, >= 0; @param screwSpeed rev/s; 0 gives the empty state
 * @param meltsFrom station where melting begins; beyond the last one: all of the screw
 * Darnell & Mol 1956 (from memory) for the packed plug of constant bulk density, pressure alike in all directions,
 * Coulomb friction; own weight and conveyor resistance where granules run loose. Pressure grows exponentially, so the
 * friction's range moves it by powers of ten: the numbers tell whether a plug can hold, not what a gauge would show.
 */
export function solidsState(
  design: Design,
  stations: Stations,
  place: FeedPlace | null,
  massFlow: number,
  screwSpeed: number,
  meltsFrom: number,
  options: SolidsOptions = {},
): SolidsState {
  const pairs = frictionPairs(design.material);
  if (!place || !(screwSpeed > 0)) return emptyState(design, stations, pairs.nominal);
  const span = solidsSpan(design, stations, meltsFrom);
  const task = { design, stations, place, massFlow: Math.max(0, massFlow), screwSpeed, span, options };
  const { limit, supply } = limitOf(design, place, screwSpeed);
  const fed = suppliedBy(design, place, backedUp(supply, massFlow) > 0);
  const nominal = evaluate(task, fed, pairs.nominal);
  const { packed } = nominal;
  return {
    pressure: packed.pressure,
    fill: packed.fill,
    torque: nominal.figures.torque,
    heat: nominal.heat,
    conveyingAngle: nominal.angle,
    freeAngle: nominal.freeAngle,
    packedFrom: packed.from,
    packedTo: packed.from === null ? null : stations.z[span.last],
    limitedBy: limit,
    nominal: nominal.figures,
    low: evaluate(task, fed, pairs.low).figures,
    high: evaluate(task, fed, pairs.high).figures,
    pressureLimit: plugPressureLimit(design.material, pairs.nominal.onBarrel),
    capped: packed.capped,
    holds: packed.holds,
    doubts: doubtsOf(task, packed, limit),
  };
}

function doubtsOf({ design, stations, place, span, options }: Task, packed: PackedState, limit: FeedLimit): string[] {
  const softensAt = options.softensAt ?? null;
  const soft = softensAt !== null && softensAt < stations.z[span.last];
  const doubts = [
    limit === 'trough' && 'Friction would carry no plug; 30 % filling is assumed, as in a conveyor trough.',
    soft && 'Granules soften before they melt: they stick to the screw there, and the plug pushes less than stated.',
    packed.capped && 'The plug locks itself: its pressure is capped where granules yield at the wall.',
    !packed.holds && 'The plug cannot hold the pressure of the melt, which works its way back.',
    place.depth < depthOverGrain.wanted * design.material.grain.d90 &&
      'Granules nearly as large as the channel feed worse than a plug.',
  ];
  return doubts.filter((doubt) => doubt !== false);
}

function emptyState(design: Design, stations: Stations, friction: FrictionPair): SolidsState {
  const none: SolidsAtFriction = { freeFlow: 0, buildable: 0, torque: 0 };
  return {
    pressure: new Float64Array(stations.count),
    fill: new Float64Array(stations.count),
    torque: 0,
    heat: new Float64Array(Math.max(0, stations.count - 1)),
    conveyingAngle: 0,
    freeAngle: 0,
    packedFrom: null,
    packedTo: null,
    limitedBy: 'plug',
    nominal: none,
    low: none,
    high: none,
    pressureLimit: plugPressureLimit(design.material, friction.onBarrel),
    capped: false,
    holds: true,
    doubts: [],
  };
}
