/**
 * The age field between screw tip and orifice against a tracer washed out of the same flow in time.
 *
 * Measured for this head, cells of 0.3, 0.2, 0.14, 0.1, 0.07 and 0.05 mm: share older than three means 0.107, 0.126, 0.130,
 * 0.143, 0.144, 0.149, the age field's 0.153 (0.154 on a mesh twice as fine); share that has left by the mean time 0.776,
 * 0.780, 0.794, 0.799, 0.802, 0.803, the age field's 0.803 (0.816 on the finer mesh: its outlet points are few). So the
 * tracer tends to the age field to first order, as its fronts and its rows of cells at the walls do: its own diffusion of
 * about speed times a tenth of a cell feeds the corner eddy with clean melt. The limits are what 0.1 mm leaves.
 */

import type { AgeStatistics } from '../../flow/tip/ageStatistics.ts';
import type { TipRegion } from '../../flow/tip/region.ts';
import { solveTipFully } from '../../flow/tip/solveTip.ts';
import { curveOf, leftBy } from '../leftBy.ts';
import { orThrow } from '../orThrow.ts';
import { once } from '../referenceRows.ts';
import { newtonian } from '../textbookScrew.ts';
import type { Check } from '../types.ts';
import { boxGrid, type SteppedHead } from './boxGrid.ts';
import { type Washout, washOut } from './tracer.ts';

/** Invented head: 8 mm bore with a flat shoulder to 2 mm, a flat-ended screw of 5 mm, 3 mm before the shoulder. */
const head: SteppedHead = {
  screwRadius: 2.5e-3,
  boreRadius: 4e-3,
  orificeRadius: 1e-3,
  screwEnd: 2e-3,
  shoulder: 5e-3,
  length: 7e-3,
};
const region: TipRegion = {
  screwRadius: head.screwRadius,
  annulusLength: head.screwEnd,
  tip: { kind: 'flat' },
  outer: [
    { z: 0, r: head.boreRadius },
    { z: head.shoulder, r: head.boreRadius },
    { z: head.shoulder, r: head.orificeRadius },
    { z: head.length, r: head.orificeRadius },
  ],
};
const volumeFlow = 10e-9;
const CELL = 1e-4;
/** Eight would lower the share older than three means by 0.002. */
const MEANS = 12;

interface Both {
  readonly field: AgeStatistics;
  readonly youngAtMean: number;
  readonly tracer: Washout;
}

const both = once((): Both => {
  const solved = orThrow(solveTipFully(region, newtonian(1000), { volumeFlow }));
  const { statistics, residence } = solved.field;
  if (!statistics || !residence) throw new Error('The head was solved without ages.');
  const tracer = washOut(boxGrid(head, solved, volumeFlow, CELL), volumeFlow, MEANS);
  return { field: statistics, youngAtMean: leftBy(curveOf(residence), statistics.meanTime), tracer };
});

const base = {
  stage: 'tip',
  unit: '',
  expected: 1,
  measure: 'relative',
  kind: 'independent',
  slow: true,
  source: 'Own tracer stepped in time on rectangles of 0.1 mm: upwind finite volumes, Heun steps; no age equation',
} as const;
const inHead = 'flat-ended 5 mm screw before a flat shoulder, 8 mm bore to 2 mm, Newtonian';

/** Checks of the age field by a tracer. */
export const washedChecks: readonly Check[] = [
  {
    ...base,
    id: 'tip.washedMean',
    quantity: `Mean age at the orifice over the mean time in which a tracer is washed out: ${inHead}`,
    limit: 1e-3,
    got: () => both().field.outletMean / both().tracer.mean,
  },
  {
    ...base,
    id: 'tip.washedOld',
    quantity: `Share older than three mean times, age field over tracer: ${inHead}`,
    limit: 0.1,
    got: () => both().field.fractionOver3 / both().tracer.olderThan3,
  },
  {
    ...base,
    id: 'tip.washedByMean',
    quantity: `Share that has left by the mean time, age field over tracer: ${inHead}`,
    limit: 0.025,
    got: () => both().youngAtMean / both().tracer.youngAtMean,
  },
];
