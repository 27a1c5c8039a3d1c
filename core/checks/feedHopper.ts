/** Checks of the hopper: discharge, arches, kind of flow, stress. */

import { cohesiveOutlet } from '../feed/arching.ts';
import { janssenStress, lateralRatio } from '../feed/bin.ts';
import { massFlowLimit, siftingRatio } from '../feed/flowKind.ts';
import { beverlooDischarge } from '../feed/hopper.ts';
import type { Check } from './types.ts';

const radians = Math.PI / 180;
const tutorial = 'University tutorial on hopper design (Jenike), without author';
const bins =
  'Thompson, Galili & Williams, two full-scale grain bins; measured, weight 7.5 kN/m³, friction and ratio 0.53';
/** kPa on the wall of a bin of maize. m. */
const binPressure = (diameter: number, depth: number) =>
  janssenStress(7500, diameter / 4, 0.53, 0.53, depth).horizontal / 1e3;

/** All checks of the hopper. */
export const hopperChecks: readonly Check[] = [
  {
    id: 'feed.coneOutlet',
    stage: 'feed',
    quantity: 'Outlet of a cone of 35° for a strength of 2.043 kPa at 1800 kg/m³',
    unit: 'm',
    expected: 0.299,
    limit: 1e-3,
    measure: 'relative',
    kind: 'published',
    source: `${tutorial}, Q1`,
    got: () => cohesiveOutlet(2043, 1800, 35 * radians, 'cone'),
  },
  {
    id: 'feed.steepConeOutlet',
    stage: 'feed',
    quantity: 'Outlet of a cone of 29.5° for a strength of 1.82 kPa at 900 kg/m³',
    unit: 'm',
    expected: 0.514,
    limit: 1e-3,
    measure: 'relative',
    kind: 'published',
    source: `${tutorial}, Q2`,
    got: () => cohesiveOutlet(1820, 900, 29.5 * radians, 'cone'),
  },
  {
    id: 'feed.slotOutlet',
    stage: 'feed',
    quantity: 'Width of a slot at 35° for a strength of 2.043 kPa at 1800 kg/m³',
    unit: 'm',
    expected: 0.1382,
    limit: 1e-3,
    measure: 'relative',
    kind: 'exact',
    source: `(1 + 35/180) sigma/(rho g); ${tutorial}, Q1, whose printed width is a slip`,
    got: () => cohesiveOutlet(2043, 1800, 35 * radians, 'wedge'),
  },
  {
    id: 'feed.massFlowCone',
    stage: 'feed',
    quantity: 'Steepness up to which a cone flows as a whole, wall friction 16°, 3° of margin',
    unit: '°',
    expected: 29.5,
    limit: 0.2,
    measure: 'absolute',
    kind: 'published',
    source: `${tutorial}, Q2, a chart reading; internal friction of 40° assumed`,
    got: () => massFlowLimit(40 * radians, 16 * radians) / radians - 3,
  },
  {
    id: 'feed.binOf11m',
    stage: 'feed',
    quantity: 'Pressure on the wall of a maize bin of 11 m at 11.9 m depth',
    unit: 'kPa',
    expected: 26.9,
    limit: 0.05,
    measure: 'relative',
    kind: 'published',
    source: `${bins} (EN 1991-4, from memory)`,
    got: () => binPressure(11, 11.9),
  },
  {
    id: 'feed.binOf13m',
    stage: 'feed',
    quantity: 'Pressure on the wall of a maize bin of 12.8 m at 15.2 m depth',
    unit: 'kPa',
    expected: 28.2,
    limit: 0.2,
    measure: 'relative',
    kind: 'published',
    source: `${bins} (EN 1991-4, from memory); known to come out a fifth high`,
    got: () => binPressure(12.8, 15.2),
  },
  {
    id: 'feed.hopperStress',
    stage: 'feed',
    quantity: 'Stress under 200 mm of granules in a tube of 25 mm, 560 kg/m³',
    unit: 'Pa',
    expected: 227.0162,
    limit: 1e-4,
    measure: 'relative',
    kind: 'exact',
    source: 'Janssen 1895 in the form of Tardos 1999, friction 0.3, ratio 0.5, evaluated apart',
    got: () => janssenStress(560 * 9.81, 0.025 / 4, 0.3, 0.5, 0.2).vertical,
  },
  {
    id: 'feed.lateralRatio',
    stage: 'feed',
    quantity: 'Sideways over downward stress of maize, internal friction 31°',
    unit: '',
    expected: 0.53,
    limit: 0.02,
    measure: 'relative',
    kind: 'fromMemory',
    source: 'EN 1991-4, table E.1',
    got: () => lateralRatio(31 * radians),
  },
  {
    id: 'feed.discharge',
    stage: 'feed',
    quantity: 'Discharge of 3 mm grains of 560 kg/m³ through 20 mm',
    unit: 'g/s',
    expected: 31.9,
    limit: 3e-3,
    measure: 'relative',
    kind: 'fromMemory',
    source: 'Beverloo, Leniger & van de Velde, Chem. Eng. Sci. 15 (1961) 260, C 0.58, k 1.4, evaluated apart',
    got: () => beverlooDischarge(0.02, 560, 0.003) * 1e3,
  },
  {
    id: 'feed.sifting',
    stage: 'feed',
    quantity: 'Size ratio from which fines fall between three touching grains',
    unit: '',
    expected: 6.46410161514,
    limit: 1e-9,
    measure: 'relative',
    kind: 'exact',
    source: 'circle inside three touching circles: 1/(2/√3 - 1)',
    got: () => siftingRatio,
  },
];
