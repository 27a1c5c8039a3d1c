/** The report as kinds of hand-over files. */

import { outputValues } from '../../doubt/outputs.ts';
import { doubtPlan, sampleRun } from '../../doubt/sample.ts';
import { summariseDoubt } from '../../doubt/summary.ts';
import type { DoubtSummary, SampleResult } from '../../doubt/types.ts';
import { predict } from '../../prediction/predict.ts';
import type { Prediction } from '../../prediction/types.ts';
import { present } from '../../present/present.ts';
import type { Project } from '../../project/schema.ts';
import { ok } from '../../result.ts';
import { utf8 } from '../bytes.ts';
import { choiceOf, numberOf } from '../check.ts';
import { fileName } from '../names.ts';
import type {
  HandoverModule,
  HandoverOption,
  HandoverProgress,
  HandoverSource,
  HandoverTools,
  HandoverValues,
} from '../types.ts';
import { buildReport } from './buildReport.ts';
import { findingCounts } from './found.ts';
import type { Report } from './model.ts';
import type { PdfPaperClass } from './pdfTypes.ts';
import type { ReportSubject } from './source.ts';
import { reportHtml } from './writeHtml.ts';
import { reportPdf } from './writePdf.ts';

const options: readonly HandoverOption[] = [
  {
    kind: 'choice',
    id: 'from',
    label: 'Figures from',
    help: 'Solved fields hold maps and dead spots; the estimate goes by formulas alone and says so.',
    choices: [
      { id: 'solved', label: 'Solved fields' },
      { id: 'estimate', label: 'The estimate' },
    ],
    start: 'solved',
  },
  {
    kind: 'number',
    id: 'samples',
    label: 'Samples for the ranges',
    help: 'How often the formulas are run with inputs drawn from their ranges, in a report of one revision; 0 leaves the ranges out. A comparison goes without: the inputs’ doubts hit all revisions alike.',
    unit: '',
    least: 0,
    most: 500,
    start: 60,
  },
];

/** Ranges of the figures of a revision; null where none are asked for or nothing could be computed. */
function doubtOf(
  project: Project,
  prediction: Prediction,
  samples: number,
  tell: HandoverProgress,
): DoubtSummary | null {
  if (samples < 1) return null;
  const plan = doubtPlan(project, prediction.revisionId, { samples, seed: 1, curvePoints: 0 });
  if (plan.inputs.length === 0) return null;
  const nominal = sampleRun(plan, -1);
  if (nominal.failure !== null) return null;
  const results: SampleResult[] = [];
  for (let i = 0; i < plan.samples; i++) {
    results.push(sampleRun(plan, i));
    tell((i + 1) / plan.samples, 'ranges');
  }
  return summariseDoubt(plan, nominal, results, outputValues(prediction));
}

/** Subjects as the report takes them; slow where ranges are asked for. */
export function reportSubjects(
  source: HandoverSource,
  values: HandoverValues,
  tell: HandoverProgress,
): ReportSubject[] {
  const { project, subjects } = source;
  const samples = Math.round(numberOf(values, 'samples'));
  return subjects.flatMap(({ revision, design, prediction: given, presentation: shown }, i): ReportSubject[] => {
    if (!given || !shown) return [];
    const estimate = choiceOf(values, 'from') === 'estimate' && given.options.fields === 'solved';
    const prediction = estimate ? predict(design, { fields: 'formula', warmUp: given.options.warmUp }) : given;
    const presentation = estimate ? present(prediction, design) : shown;
    const doubt = doubtOf(project, prediction, subjects.length > 1 ? 0 : samples, (done, stage) =>
      tell((i + done) / subjects.length, stage),
    );
    const prefix = subjects.length > 1 ? `Revision ${revision.id}` : '';
    return [{ project, revision, design, prediction, presentation, doubt, prefix }];
  });
}

const stemOf = ({ project, subjects }: HandoverSource): string[] => [
  project.name,
  subjects.map(({ revision }) => revision.id).join('-'),
  'report',
];

interface Written {
  readonly bytes: Uint8Array;
  readonly facts: readonly { readonly label: string; readonly text: string }[];
}

const writer =
  (
    extension: string,
    mediaType: string,
    write: (report: Report, tools: HandoverTools) => Promise<Written>,
  ): HandoverModule['write'] =>
  async (source, values, tools, tell) => {
    tell(0, 'reading');
    const subjects = reportSubjects(source, values, (done, stage) => tell(0.7 * done, stage));
    tell(0.7, 'writing');
    const report = buildReport(subjects, source.date);
    const { bytes, facts } = await write(report, tools);
    tell(1, 'done');
    const findings = subjects.map(
      ({ revision, prediction }) => `${revision.id}: ${findingCounts(prediction.findings)}`,
    );
    return ok([
      {
        name: fileName(stemOf(source), extension),
        mediaType,
        bytes,
        facts: [
          ...facts,
          {
            label: 'Figures',
            text: String(
              report.sections.flatMap(({ blocks }) => blocks).filter(({ kind }) => kind === 'figure').length,
            ),
          },
          { label: 'Findings', text: findings.join('; ') },
        ],
        cautions: [...report.notices],
      },
    ]);
  };

const common = { group: 'report', needs: 'solved', several: true, options } as const;

/** The report to print and to file. */
export const reportModule: HandoverModule = {
  ...common,
  id: 'report',
  label: 'Report (PDF)',
  help: 'Design, prediction with its models and ranges, maps, dead spots, colour, findings and sources, on A4; several revisions are compared with the first.',
  extension: 'pdf',
  mediaType: 'application/pdf',
  write: writer('pdf', 'application/pdf', async (report, tools) => {
    const { bytes, pages, lost } = await reportPdf(report, (await tools.pdf()) as PdfPaperClass);
    const signs =
      lost.length === 0
        ? []
        : [{ label: 'Lettering', text: `Signs the font lacks became ? or lost their marks: ${lost.join(' ')}` }];
    return { bytes, facts: [{ label: 'Pages', text: String(pages) }, ...signs] };
  }),
};

/** The report to read on a screen. */
export const htmlModule: HandoverModule = {
  ...common,
  id: 'html',
  label: 'Report (web page)',
  help: 'The same report as one file for a browser, light or dark, with nothing fetched from elsewhere.',
  extension: 'html',
  mediaType: 'text/html',
  write: writer('html', 'text/html', async (report) => ({ bytes: utf8(reportHtml(report)), facts: [] })),
};
