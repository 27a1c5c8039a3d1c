/** Names and help of what the bench log holds: fields of a trial, columns of a table, factors. */

import type { BenchField, FactorName, TrialFieldName } from '../bench/names.ts';

/** Fields of a trial. */
export const trialFields: Readonly<Record<TrialFieldName, { readonly label: string; readonly help: string }>> = {
  date: { label: 'Date', help: 'Day of the trial.' },
  revisionId: { label: 'Revision', help: 'The machine that was run.' },
  materialId: { label: 'Granulate', help: 'What was in the hopper.' },
  lot: { label: 'Lot', help: 'Delivery or batch of the granulate.' },
  screwSpeedRpm: { label: 'Screw speed', help: 'As counted, not as asked for.' },
  setTempsC: { label: 'Set temperature', help: 'One for each heater, from the feed to the nozzle.' },
  seconds: { label: 'Time', help: 'How long the strand was collected.' },
  grams: { label: 'Mass', help: 'What the collected strand weighs.' },
  torqueNm: { label: 'Torque', help: 'At the screw; leave empty where it was not measured.' },
  currentA: { label: 'Current', help: 'Of the motor; kept with the trial, not used by the calibration.' },
  labL: { label: 'L*', help: 'Lightness of the strand, 0 black to 100 white.' },
  labA: { label: 'a*', help: 'Red (positive) or green of the strand.' },
  labB: { label: 'b*', help: 'Yellow (positive) or blue of the strand.' },
  note: { label: 'Note', help: 'What was seen.' },
  excludedWhy: { label: 'Why it is left out', help: 'A trial left out stays in the log but is not used.' },
};

/** What a column of a table may stand for. */
export const csvFields: Readonly<Record<BenchField, string>> = {
  id: 'Trial id',
  date: 'Date',
  revision: 'Revision',
  material: 'Granulate',
  lot: 'Lot',
  speed: 'Screw speed',
  tempC: 'Set temperature',
  seconds: 'Time',
  grams: 'Mass',
  rate: 'Mass per time',
  torque: 'Torque',
  current: 'Current',
  labL: 'L*',
  labA: 'a*',
  labB: 'b*',
  photo: 'Picture file',
  note: 'Note',
  excluded: 'Left out?',
  excludedWhy: 'Why left out',
};

/** Factors of a calibration. */
export const factors: Readonly<Record<FactorName, { readonly label: string; readonly help: string }>> = {
  feed: {
    label: 'Feed',
    help: 'On what the screw takes in at the hopper. Needs trials in which feeding sets the output.',
  },
  viscosity: {
    label: 'Viscosity',
    help: 'On the viscosity of the melt. Output against the nozzle and torque show it.',
  },
  wallFriction: { label: 'Friction on the barrel', help: 'Of granules on the barrel. It moves feeding and torque.' },
  colourRate: {
    label: 'Rate of the colour',
    help: 'On the reaction that browns the melt. Needs L*a*b* of the strands, which count only when it is looked for.',
  },
};
