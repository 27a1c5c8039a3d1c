/** Which figures of the print side belong to which topic, and what each topic rests on. */

import type { Basis, PrintMatch } from '../prediction/types.ts';
import { type PrintTopicId, printTopicBases, printTopicIds } from '../print/topicBases.ts';

export { type PrintTopicId, printTopicIds } from '../print/topicBases.ts';

/** Row ids of the group `print` by topic, in reading order. */
export const printTopicRows: Readonly<Record<PrintTopicId, readonly string[]>> = {
  demand: ['demand', 'meanDemand', 'margin', 'highestSpeed', 'speedForDemand'],
  line: ['passesPerWall', 'fittedWidth', 'lineToBore', 'lineArea', 'rectangleArea'],
  strand: ['strand', 'strandNumber', 'capillaryNumber', 'dripRate', 'dropMass'],
  release: ['ooze', 'oozeTime', 'nozzleShare', 'releaseAngle', 'releaseLength'],
  cooling: ['setTime', 'coolingStress', 'wantedBed'],
  controller: [
    ...['stepsPerMm3', 'stepsPerMm-set', 'stepsPerMm-1.75', 'stepsPerMm-2.85', 'pressureTime'],
    ...['fullStepVolume', 'demandStepRate'],
  ],
};

/** Topic of a row of the group `print`. */
export const printTopicOf = (rowId: string): PrintTopicId =>
  printTopicIds.find((id) => printTopicRows[id].includes(rowId)) ?? 'demand';

/** What is doubtful about a topic of this case, from what the material and the description leave open. */
function doubtOf({ release, drip, cooling, line }: PrintMatch, topic: PrintTopicId): string | null {
  const doubts: Partial<Record<PrintTopicId, readonly (string | false)[]>> = {
    line: [
      line.width !== 'good' && `The line is ${line.width} for this bore.`,
      line.height !== 'good' && `The layer is ${line.height} for this bore.`,
    ],
    strand: [drip.held === null && 'The surface tension is not known, so neither strand nor drops can be told.'],
    release: [!release.compressibilityKnown && 'The melt’s compressibility is not known; a common one is taken.'],
    controller: [!release.compressibilityKnown && 'The pressure time takes a common compressibility of the melt.'],
    cooling: [
      !cooling.coefficientKnown && 'Cooling by the air is not given; still air is taken, within a factor of two.',
      !cooling.lumped && 'The line is too thick to be of one temperature while it cools; its core sets later.',
    ],
  };
  const said = (doubts[topic] ?? []).filter((doubt) => doubt !== false);
  return said.length > 0 ? said.join(' ') : null;
}

/** What the figures of a topic rest on in this prediction. */
export const printTopicBasis = (print: PrintMatch, topic: PrintTopicId): Basis => ({
  ...printTopicBases[topic],
  doubt: doubtOf(print, topic),
});
