/** Reports of examples for tests, from predictions by formulas. */

import PDFDocument from 'pdfkit';
import { buildReport } from '../../../../core/handover/report/buildReport.ts';
import type { Block, FigureBlock, Report } from '../../../../core/handover/report/model.ts';
import { reportSubjects } from '../../../../core/handover/report/reportModules.ts';
import type { HandoverTools } from '../../../../core/handover/types.ts';
import { predictedSource } from '../source.ts';

const none = () => Promise.reject(new Error('not asked'));
/** Tools that write a PDF and nothing else. */
export const tools: HandoverTools = { solids: none, brep: none, pdf: () => Promise.resolve(PDFDocument) };

/** The report of an example's revisions. */
export async function reportOf(name: string, ids: readonly string[], samples = 0): Promise<Report> {
  const source = await predictedSource(name, ids);
  return buildReport(
    reportSubjects(source, { from: 'solved', samples }, () => undefined),
    source.date,
  );
}

/** Every block, the summary's first. */
export const blocksOf = ({ summary, sections }: Report): Block[] => [
  ...summary,
  ...sections.flatMap(({ blocks }) => blocks),
];
/** Every figure. */
export const figuresOf = (report: Report): FigureBlock[] =>
  blocksOf(report).flatMap((block) => (block.kind === 'figure' ? [block] : []));

/** What is reported: name, example, revisions. */
export const cases = [
  ['one revision', 'demo', ['C']],
  ['three revisions', 'demo', ['A', 'B', 'C']],
  ['a machine that delivers nothing', 'pla-pellet-misfit', ['P1']],
] as const;

/** Reports of the cases, made once a worker. */
let made: Promise<Report[]> | null = null;

/** Reports in the order of the cases. */
export function reportsOfCases(): Promise<Report[]> {
  made ??= Promise.all(cases.map(([, name, revisions]) => reportOf(name, revisions)));
  return made;
}
