/** Designs for the geometry tests, written directly in SI. */

import type {
  Design,
  FlightedSection,
  Nozzle,
  PlainSection,
  ScrewSection,
  ScrewTip,
} from '../../../core/design/types.ts';

const mm = 1e-3;
const degree = Math.PI / 180;

/** A flighted section of a 14 mm screw: six turns of lead = diameter, square flanks; any field may differ. */
export function flighted(change: Partial<FlightedSection> = {}): FlightedSection {
  return {
    kind: 'flighted',
    length: 84 * mm,
    leadStart: 14 * mm,
    leadEnd: 14 * mm,
    rootDiameterStart: 9 * mm,
    rootDiameterEnd: 9 * mm,
    starts: 1,
    flightWidth: 1.4 * mm,
    flankAngle: 0,
    rootFillet: 0,
    ...change,
  };
}

/** A plain section 10 mm long; any field may differ. */
export function plain(change: Partial<PlainSection> = {}): PlainSection {
  return { kind: 'plain', length: 10 * mm, rootDiameterStart: 9 * mm, rootDiameterEnd: 9 * mm, ...change };
}

/** A tip without a pin unless asked for. */
export function tip(kind: ScrewTip['kind'], includedAngle = Math.PI, pinDiameter = 0, pinLength = 0): ScrewTip {
  return { kind, includedAngle, pinDiameter, pinLength };
}

/** What the geometry stage reads of a design. */
export interface Wanted {
  sections?: readonly ScrewSection[];
  hand?: 'right' | 'left';
  radialClearance?: number;
  tip?: ScrewTip;
  shankDiameter?: number;
  shankLength?: number;
  barrelLength?: number;
  feedOpening?: Design['barrel']['feedOpening'];
  heatBreak?: Design['barrel']['heatBreak'];
  segments?: Nozzle['segments'];
}

/** A 60 degree entry from 14 mm to 1 mm, then a 2 mm land. */
const entry: Nozzle['segments'] = [
  { name: 'entry', length: (6.5 * mm) / Math.tan(30 * degree), startDiameter: 14 * mm, endDiameter: 1 * mm },
  { name: 'land', length: 2 * mm, startDiameter: 1 * mm, endDiameter: 1 * mm },
];

/**
 * A design as the geometry stage sees it. The cast stands in for validateDesign: these tests look at geometry alone, so
 * hopper, drive, material, process and print demand, which geometry never reads, are left out.
 */
export function designOf(wanted: Wanted = {}): Design {
  const sections = wanted.sections ?? [flighted()];
  const length = sections.reduce((sum, section) => sum + section.length, 0);
  return {
    revisionId: 'T',
    revisionName: 'test',
    hash: 'test',
    screw: {
      hand: wanted.hand ?? 'right',
      radialClearance: wanted.radialClearance ?? 0.05 * mm,
      sections,
      tip: wanted.tip ?? tip('flat'),
      shankDiameter: wanted.shankDiameter ?? 10 * mm,
      shankLength: wanted.shankLength ?? 20 * mm,
      steel: { name: 'test', yieldStress: 4e8, young: 2e11, conductivity: 40, expansion: 1.2e-5 },
    },
    barrel: {
      boreDiameter: 14 * mm,
      outerDiameter: 28 * mm,
      length: wanted.barrelLength ?? length + 12 * mm,
      conductivity: 40,
      feedOpening: wanted.feedOpening ?? { start: 4 * mm, length: 20 * mm, width: 12 * mm },
      zones: [],
      heatBreak: wanted.heatBreak ?? null,
    },
    nozzle: { segments: wanted.segments ?? entry, outerDiameter: 20 * mm, setTemperature: 470, maxPower: 40 },
  } as unknown as Design;
}
