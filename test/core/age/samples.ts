/** Laws, a material and parts made up for the tests of colour. */

import type { ColouredMaterial } from '../../../core/age/colourTypes.ts';
import type { AgedPart } from '../../../core/age/extentDistribution.ts';
import type { ScissionLaw, TwoStepLaw } from '../../../core/age/laws.ts';
import type { DegradationLaw } from '../../../core/design/types.ts';
import { shareCuts, type TimeAtoms } from '../../../core/residence/atoms.ts';

/** K at which the rates are stated. */
export const reference = 473.15;

/** No doubt range. */
export const exact = (value: number) => ({ value, low: value, high: value });

const head = { referenceTemperature: reference, validFrom: 400, validTo: 520, observed: 'made up' };

/** Order-based law. @param rate 1/s at the reference temperature */
export const orderLaw = (order: number, rate = 0.01): DegradationLaw => ({
  ...head,
  id: `order ${order}`,
  order,
  rateAtReference: exact(rate),
  activation: exact(80e3),
});

/** Chain scission. @param rate 1/s */
export const scissionLaw = (rate: number, initial?: number): ScissionLaw => ({
  ...head,
  kind: 'scission',
  id: 'scission',
  rateAtReference: exact(rate),
  activation: exact(119e3),
  repeatUnitMass: 0.072,
  ...(initial === undefined ? {} : { initialMolarMass: exact(initial) }),
});

/** Two steps in series, the second more sensitive to temperature. */
export const seriesLaw: TwoStepLaw = {
  ...head,
  kind: 'twoStep',
  id: 'series',
  first: { rateAtReference: exact(0.01), activation: exact(60e3), solidYield: 0.8 },
  second: { rateAtReference: exact(0.005), activation: exact(180e3), solidYield: 0.4 },
};

/** Ages of a stirred tank: bins at shares with the exact mean of each. @param mean s */
export function tankAtoms(mean: number, cuts = shareCuts(60, 60)): TimeAtoms {
  // the share left, times age, integrated: y - y ln y with y = 1 - F
  const passed = (share: number) => (share >= 1 ? 0 : (1 - share) * (1 - Math.log(1 - share)));
  const share = Float64Array.from({ length: cuts.length - 1 }, (_, i) => cuts[i + 1] - cuts[i]);
  const time = share.map((own, i) => (mean * (passed(cuts[i]) - passed(cuts[i + 1]))) / own);
  return { time, share, shortest: 0 };
}

/** Part at one temperature. */
export const part = (atoms: TimeAtoms, temperature = reference): AgedPart => ({
  part: 'made up',
  atoms,
  heat: [{ duration: 1, temperature }],
});

/** Pale material that darkens by a law of zero order, 0.01 1/s. */
export const pale: ColouredMaterial = {
  name: 'Pale',
  invented: true,
  degradation: [orderLaw(0), scissionLaw(1e-6, 100)],
  colourLaw: 'order 0',
  colourAnchors: [
    { extent: 0, lab: [80, 4, 20] },
    { extent: 12, lab: [70.5, 7.4, 26.2] },
    { extent: 45, lab: [36.2, 11.4, 26.5] },
  ],
};
