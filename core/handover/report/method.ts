/** Method and limits on one page, and what the report was made from. */

import { canonicalJson, contentHash } from '../../hash.ts';
import { calibrationNote, fieldsOf } from '../../present/foundation.ts';
import { coreVersion } from '../../version.ts';
import { type Block, cell, heading, paragraph, type ReportSection, table } from './model.ts';
import type { ReportSubject } from './source.ts';

const steps: readonly string[] = [
  'The file is checked; a value outside its range stops the run and is named. Checked values become one design in SI units, from which geometry is computed once.',
  'Temperatures and the working point are found together: granules are fed as a plug with friction, heated and melted by the barrel and by shear, and pumped against the nozzle. The output is the least of all capacities.',
  'Formulas answer first. Where fields are solved, the channel’s cross-sections are solved for all three velocities with the shear-thinning law, and the flow around the tip and in the nozzle in a plane through the axis; they replace the formulas for pressure, residence and dead spots.',
  'Ages along the streamlines give the residence distribution. Rate laws of ageing along age and temperature give extents, and these, through measured or invented colours, the colour difference ΔE00 (CIE 2000).',
  'Rules look at design and prediction and tell findings; standing cautions are told for every machine of this kind.',
];

const limits: readonly string[] = [
  'Flow is steady. Surging, start and stop, and the scatter of a hopper are not computed; a single working point stands for the run.',
  'The fields of the channel are solved section by section, melt sticking to the walls. Each is solved at one temperature: differences across the channel are left out. So are slip at the wall and the melt’s elasticity.',
  'Granules are taken as one size class that moves as a plug. Bridging, segregation and moisture are told by rules, not computed as motion.',
  'Barrel and screw are taken as round and coaxial. Eccentric running, wear and bending are not computed.',
  'Ageing follows the given laws, also where temperatures lie outside those at which they were measured; the figures then say so. Reaction with air and with metal is not told apart.',
  'Ranges hold what the stated ranges of inputs do. What no range is given for is taken as known, and the models’ own errors come in only through named factors.',
  'A prediction is no approval. Strength, heat, electricity and pressure must be judged by people licensed to do so, under local codes; and an output must be weighed before it is relied on.',
];

/** One page: how it was computed, and what it cannot say. */
export const methodSection = (): ReportSection => ({
  id: 'method',
  title: 'Method and limits',
  ownPage: true,
  blocks: [
    heading('method-steps', 'How the figures came about'),
    { kind: 'list', items: steps.map((text) => cell(text)) },
    heading('method-limits', 'What they cannot say'),
    { kind: 'list', items: limits.map((text) => cell(text)) },
    paragraph(
      'Every figure carries its model, assumptions, range and source; where a figure lies outside the range of its model, the report says “doubtful here” beside it.',
    ),
  ],
});

const optionsText = ({ prediction }: ReportSubject): string => {
  const { stationsPerTurn, curvePoints, fields, warmUp } = prediction.options;
  const asked =
    fields === 'solved'
      ? fieldsOf(prediction) === 'solved'
        ? 'solved fields'
        : 'solved fields asked for, none solved'
      : 'formulas alone';
  return `${asked}; ${stationsPerTurn} stations a turn; ${curvePoints} points of the curve; warming up ${warmUp ? 'stepped' : 'not stepped'}`;
};

/** Hash of revision, versions, options and date. */
export function originSection(subjects: readonly ReportSubject[], date: string): ReportSection {
  const rows = subjects.flatMap((subject): [string, string][] => {
    const { revision, prediction } = subject;
    const of = subjects.length > 1 ? `${revision.id}: ` : '';
    return [
      [`${of}hash of the revision as stored`, contentHash(JSON.parse(canonicalJson(revision)))],
      [`${of}hash of what was predicted`, prediction.designHash],
      [`${of}options`, optionsText(subject)],
      [`${of}calibration`, calibrationNote(prediction)],
      ...(subject.doubt
        ? ([[`${of}ranges`, `${subject.doubt.done} samples by formulas, drawn from seed 1`]] as [string, string][])
        : []),
    ];
  });
  const blocks: Block[] = [
    table(
      'origin-table',
      'Two reports with the same hashes, versions and options hold the same figures',
      ['Item|40', 'Value|60'],
      [
        ...rows,
        ['version of the models', subjects[0]?.prediction.coreVersion ?? coreVersion],
        ['date of writing', date],
      ],
    ),
  ];
  return { id: 'origin', title: 'What this report was made from', blocks };
}
