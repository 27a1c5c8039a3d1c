/** Checks of solids conveying, intake and conveyors. */

import { conveyorPower, conveyorVolumeFlow } from '../feed/conveyor.ts';
import { angleOfAdvance } from '../feed/plug.ts';
import { perfectBite } from '../feed/throat.ts';
import { conveyed, smallPlug, textbookPlug } from './feedCases.ts';
import { hopperChecks } from './feedHopper.ts';
import { inch } from './textbookScrew.ts';
import type { Check } from './types.ts';

const degrees = 180 / Math.PI;
const darnell = 'forces and torques of Darnell & Mol 1956 on one slice, solved with scipy fsolve for push and angle';
const designNote = 'Conveyor design note with outputs, in the form of ISO 7119 and DIN 15262';
const cema = 'ANSI/CEMA 350, capacities at 1 rev/min';
const foot = 0.3048;
/** kg/s of a conveyor of 300 mm at 20 rev/min, 80 % full, 1250 kg/m³ */
const noteFlow = () => conveyorVolumeFlow(0.3, 0, 0.3, 20 / 60, 0.8) * 1250;

/** All checks of the feed, hopper included. */
export const feedChecks: readonly Check[] = [
  {
    id: 'feed.plugAngle',
    stage: 'feed',
    quantity: 'Angle of a plug in a 63.5 mm screw, friction 0.45 on barrel and 0.25 on screw',
    unit: '°',
    expected: 33.4624,
    limit: 1e-4,
    measure: 'relative',
    kind: 'independent',
    source: darnell,
    got: () => conveyed(textbookPlug, 0.45, 0.25).angle * degrees,
  },
  {
    id: 'feed.plugAngleNearSlip',
    stage: 'feed',
    quantity: 'Angle of a plug in a 63.5 mm screw, friction 0.25 on both: it nearly turns with the screw',
    unit: '°',
    expected: 7.09205,
    limit: 1e-4,
    measure: 'relative',
    kind: 'independent',
    source: darnell,
    got: () => conveyed(textbookPlug, 0.25, 0.25).angle * degrees,
  },
  {
    id: 'feed.smallPlugAdvance',
    stage: 'feed',
    quantity: 'Advance per turn over the lead, 16 mm screw, friction 0.4 and 0.2',
    unit: '',
    expected: 0.729454,
    limit: 1e-4,
    measure: 'relative',
    kind: 'independent',
    source: darnell,
    got: () => conveyed(smallPlug, 0.4, 0.2).efficiency,
  },
  {
    id: 'feed.plugWithPressure',
    stage: 'feed',
    quantity: 'Angle of a plug in a 63.5 mm screw, friction 0.45 and 0.25, pressure growing tenfold in 12.5 turns',
    unit: '°',
    expected: 32.307,
    limit: 1e-4,
    measure: 'relative',
    kind: 'fromMemory',
    source: 'Darnell & Mol 1956 as arranged by Tadmor & Klein 1970 (equations from memory), evaluated apart',
    got: () => conveyed(textbookPlug, 0.45, 0.25, 10, 12.5).angle * degrees,
  },
  {
    id: 'feed.measuredAngle',
    stage: 'feed',
    quantity: 'Angle of a plug that advances by 25.3 % of a square pitch',
    unit: '°',
    expected: 6.153,
    limit: 1e-3,
    measure: 'relative',
    kind: 'fromMemory',
    source: 'Rate of 67.1 kg/h said to be measured on that screw (Tadmor & Gogos), angle evaluated apart',
    got: () => angleOfAdvance(0.253, textbookPlug.lead / (Math.PI * textbookPlug.diameter)) * degrees,
  },
  {
    id: 'feed.conveyorFlow',
    stage: 'feed',
    quantity: 'Screw conveyor of 300 mm, 20 rev/min, 80 % full, 1.25 t/m³',
    unit: 't/h',
    expected: 25.447,
    limit: 1e-4,
    measure: 'relative',
    kind: 'published',
    source: designNote,
    got: () => noteFlow() * 3.6,
  },
  {
    id: 'feed.conveyorPower',
    stage: 'feed',
    quantity: 'Power of a conveyor for 25.4 t/h over 5 m level at a resistance of 4',
    unit: 'kW',
    expected: 1.387,
    limit: 5e-4,
    measure: 'relative',
    kind: 'published',
    source: designNote,
    got: () => conveyorPower(noteFlow(), 5, 0, 4) / 1e3,
  },
  {
    id: 'feed.conveyorLift',
    stage: 'feed',
    quantity: 'Power of a conveyor for 25.4 t/h over 5 m with a lift of 0.3 m',
    unit: 'kW',
    expected: 1.408,
    limit: 5e-4,
    measure: 'relative',
    kind: 'published',
    source: designNote,
    got: () => conveyorPower(noteFlow(), 5, 0.3, 4) / 1e3,
  },
  {
    id: 'feed.sixInchConveyor',
    stage: 'feed',
    quantity: 'Conveyor of 6 in on a 2⅜ in pipe at 1 rev/min, 30 % full',
    unit: 'ft³/h',
    expected: 1.49,
    limit: 1e-3,
    measure: 'relative',
    kind: 'fromMemory',
    source: cema,
    got: () => (conveyorVolumeFlow(6 * inch, 2.375 * inch, 6 * inch, 1 / 60, 0.3) * 3600) / foot ** 3,
  },
  {
    id: 'feed.twelveInchConveyor',
    stage: 'feed',
    quantity: 'Conveyor of 12 in on a 3½ in pipe at 1 rev/min, 45 % full',
    unit: 'ft³/h',
    expected: 19.4,
    limit: 1e-3,
    measure: 'relative',
    kind: 'fromMemory',
    source: cema,
    got: () => (conveyorVolumeFlow(12 * inch, 3.5 * inch, 12 * inch, 1 / 60, 0.45) * 3600) / foot ** 3,
  },
  {
    id: 'feed.perfectBite',
    stage: 'feed',
    quantity: 'Most a 2.5 in screw can take in, 0.45 in deep, 80 rev/min, 0.63 g/cm³',
    unit: 'lb/h',
    expected: 713,
    limit: 1e-3,
    measure: 'relative',
    kind: 'published',
    source: 'A. Griff, The relationship of inpush to output, part 2, PlasticsToday, 2016',
    got: () => (perfectBite(2.5 * inch, 0.45 * inch, 2.5 * inch) * 80 * 60 * 630) / 0.45359237,
  },
  ...hopperChecks,
];
