/** Screws to start from, sized for a machine and its granulate. Lengths mm as stored. */

import type { Revision, SectionInput } from '../schema.ts';
import { feedDepth, meterDepth, neat, rootOf, type ScrewRoom, screwEnd } from './room.ts';

/** Kinds of screw to start from. */
export type TemplateId = 'constant' | 'tapered' | 'twoStage' | 'vThread' | 'doubleStart';

/** A screw as made from a template. */
export interface TemplateScrew {
  readonly sections: SectionInput[];
  readonly tip: Revision['screw']['tip'];
  /** the 90 % grain asks for a deeper channel than the core allows */
  readonly tooCoarse: boolean;
}

/** One stretch of a plan: its share of the length and its depths from the bore. */
interface Stretch {
  readonly name: string;
  readonly share: number;
  readonly fromMm: number;
  readonly toMm: number;
  readonly plain?: true;
}

/** Form of the flight, sizes over the bore. */
interface Flight {
  /** lead over the bore; 1 is the square pitch, common practice */
  readonly lead: number;
  /** land over the bore; a tenth is common practice */
  readonly land: number;
  readonly starts: number;
  readonly flankDeg: number;
}

const squareFlight: Flight = { lead: 1, land: 0.1, starts: 1, flankDeg: 0 };
/** Leans of 15 to 30 degrees and a narrow land are what wood screws have; from memory. */
const vFlight: Flight = { lead: 0.8, land: 0.05, starts: 1, flankDeg: 25 };
/** Two flights need a longer lead, or too little channel is left between them; own choice. */
const doubleFlight: Flight = { lead: 1.5, land: 0.1, starts: 2, flankDeg: 0 };

/** Root fillet over the smaller of flight height and channel width: keeps corners moving; own choice. */
const filletShare = 0.4;

/** Flight values of a section with these roots; the fillet fits at both ends. */
function flightOf(room: ScrewRoom, flight: Flight, rootsMm: readonly number[]) {
  const leadMm = neat(flight.lead * room.boreMm);
  const flightWidthMm = neat(flight.land * room.boreMm);
  const fillets = rootsMm.map((root) => {
    const height = room.boreMm / 2 - room.clearanceMm - root / 2;
    const width = flightWidthMm + 2 * height * Math.tan((flight.flankDeg * Math.PI) / 180);
    return filletShare * Math.min(height, leadMm / flight.starts - width);
  });
  return {
    leadStartMm: leadMm,
    leadEndMm: leadMm,
    starts: flight.starts,
    flightWidthMm,
    flankAngleDeg: flight.flankDeg,
    rootFilletMm: Math.max(0, Math.floor(Math.min(...fillets) * 20) / 20),
  };
}

function sectionOf(room: ScrewRoom, flight: Flight, { name, fromMm, toMm, plain }: Stretch, lengthMm: number) {
  const roots = { rootDiameterStartMm: rootOf(room, fromMm), rootDiameterEndMm: rootOf(room, toMm) };
  const base = { name, lengthMm, ...roots };
  if (plain) return { kind: 'plain' as const, ...base };
  return { kind: 'flighted' as const, ...base, ...flightOf(room, flight, Object.values(roots)) };
}

/** Stretches laid end to end over the whole length; the last takes what rounding leaves. */
function laidOut(room: ScrewRoom, flight: Flight, stretches: readonly Stretch[]): TemplateScrew {
  const last = stretches.at(-1);
  const { totalMm, tip } = screwEnd(room, rootOf(room, last?.toMm ?? 0), last?.plain === true);
  let leftMm = totalMm;
  const sections = stretches.map((stretch) => {
    const lengthMm = stretch === last ? Number(leftMm.toFixed(3)) : neat(stretch.share * totalMm);
    leftMm -= lengthMm;
    return sectionOf(room, flight, stretch, lengthMm);
  });
  return { sections, tip, tooCoarse: feedDepth(room).short };
}

const constant = (room: ScrewRoom): TemplateScrew => {
  const { depthMm } = feedDepth(room);
  return laidOut(room, squareFlight, [{ name: 'constant depth', share: 1, fromMm: depthMm, toMm: depthMm }]);
};

/** Shares of a third, a third and a third are common practice for granules. */
const threeZones = (room: ScrewRoom): Stretch[] => {
  const [deep, shallow] = [feedDepth(room).depthMm, meterDepth(room)];
  return [
    { name: 'feed', share: 0.35, fromMm: deep, toMm: deep },
    { name: 'compression', share: 0.35, fromMm: deep, toMm: shallow },
    { name: 'metering', share: 0.3, fromMm: shallow, toMm: shallow },
  ];
};

const tapered = (room: ScrewRoom): TemplateScrew => laidOut(room, squareFlight, threeZones(room));

/** Depth of the second metering over the first: it must carry all that arrives; 1.3 to 1.8 is common practice. */
const secondPump = 1.5;

const twoStage = (room: ScrewRoom): TemplateScrew => {
  const [deep, shallow] = [feedDepth(room).depthMm, meterDepth(room)];
  const second = Math.min(deep, secondPump * shallow);
  return laidOut(room, squareFlight, [
    { name: 'feed', share: 0.28, fromMm: deep, toMm: deep },
    { name: 'first compression', share: 0.17, fromMm: deep, toMm: shallow },
    { name: 'first metering', share: 0.13, fromMm: shallow, toMm: shallow },
    { name: 'decompression', share: 0.14, fromMm: deep, toMm: deep },
    { name: 'second compression', share: 0.08, fromMm: deep, toMm: second },
    { name: 'second metering', share: 0.15, fromMm: second, toMm: second },
    { name: 'plain tip', share: 0.05, fromMm: second, toMm: second, plain: true },
  ]);
};

/** Share of the depth that a wood screw's core leaves at its end, seen from the point; own choice. */
const vEnd = 0.6;

const vThread = (room: ScrewRoom): TemplateScrew => {
  const { depthMm } = feedDepth(room);
  const endMm = Math.max(vEnd * depthMm, meterDepth(room));
  return laidOut(room, vFlight, [{ name: 'V-thread', share: 1, fromMm: depthMm, toMm: endMm }]);
};

const doubleStart = (room: ScrewRoom): TemplateScrew => laidOut(room, doubleFlight, threeZones(room));

/** The makers, by kind. */
const makers: Readonly<Record<TemplateId, (room: ScrewRoom) => TemplateScrew>> = {
  constant,
  tapered,
  twoStage,
  vThread,
  doubleStart,
};

/** All kinds, the simplest first. */
export const templateIds = Object.keys(makers) as readonly TemplateId[];

/** A screw of this kind for a machine. */
export const templateScrew = (id: TemplateId, room: ScrewRoom): TemplateScrew => makers[id](room);
