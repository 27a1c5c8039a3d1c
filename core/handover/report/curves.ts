/** Curves of one revision, and of several laid over each other. */

import type { PresentedSeries } from '../../present/types.ts';
import { type ChartCurve, type ChartSpec, chart, curveWords } from './chart.ts';
import { type Block, type FigureBlock, paragraph, type ReportSection } from './model.ts';
import { idOf, type ReportSubject, titleOf } from './source.ts';

/** Plots of a single revision: the series' ids, and what is special about each. */
const shownPlots: readonly {
  readonly id: string;
  readonly height?: number;
  readonly logX?: boolean;
  readonly along?: boolean;
}[] = [
  { id: 'pressure', along: true, height: 170 },
  { id: 'temperature', along: true, height: 220 },
  { id: 'fill', along: true, height: 170 },
  { id: 'molten', along: true, height: 170 },
  { id: 'output', height: 230 },
  { id: 'torque', height: 170 },
  { id: 'residence', height: 210, logX: true },
];

/** Plots in which revisions are laid over each other, with the curve that stands for each. */
const overlaidPlots: readonly { readonly id: string; readonly name: string; readonly logX?: boolean }[] = [
  { id: 'output', name: 'output' },
  { id: 'pressure', name: 'melt' },
  { id: 'temperature', name: 'granules and melt' },
  { id: 'molten', name: 'molten share' },
  { id: 'torque', name: 'asked' },
  { id: 'residence', name: '' },
];

const hasValues = ({ y }: PresentedSeries): boolean => y.some((value) => Number.isFinite(value) && value !== 0);

/** Whether a curve has a value up to a bound. */
const reaches =
  (most: number) =>
  ({ y }: PresentedSeries): boolean =>
    y.some((value) => value <= most);

/** Where the screw's sections end, mm. */
function sectionEnds({ design }: ReportSubject): { x: number; text: string }[] {
  let z = 0;
  return design.screw.sections.map(({ length }, i) => {
    z += length;
    return { x: z * 1000, text: `end of ${i + 1}` };
  });
}

/** Greatest output counts, not bounds that lie far above it. */
function yRangeOf(id: string, series: readonly PresentedSeries[]): { yRange?: readonly [number, number] } {
  if (id === 'fill' || id === 'molten' || id === 'residence') return { yRange: [0, 100] };
  if (id !== 'output') return {};
  const most = Math.max(0, ...(series.find(({ name }) => name === 'output')?.y ?? []).filter(Number.isFinite));
  return most > 0 ? { yRange: [0, 2.2 * most] } : {};
}

function figure(id: string, title: string, spec: ChartSpec, note = ''): FigureBlock {
  const words = spec.curves.map((curve) => curveWords(curve, spec.xUnit, spec.yUnit)).join('; ');
  return { kind: 'figure', id, caption: `${title}${note}`, alt: `${title}. ${words}.`, picture: chart(spec) };
}

function specOf(first: PresentedSeries, curves: readonly ChartCurve[]): ChartSpec {
  return { xLabel: first.xLabel, xUnit: first.xUnit, yLabel: first.yLabel, yUnit: first.yUnit, curves };
}

function plotOf(subject: ReportSubject, plot: (typeof shownPlots)[number]): Block[] {
  const series = subject.presentation.series.filter(({ id }) => id === plot.id);
  const { yRange } = yRangeOf(plot.id, series);
  const most = yRange?.[1] ?? Number.POSITIVE_INFINITY;
  const [drawn, above] = [
    series.filter(hasValues).filter(reaches(most)),
    series.filter(hasValues).filter((one) => !reaches(most)(one)),
  ];
  const [first] = drawn;
  if (!first) return [];
  const higher =
    above.length > 0 ? `; higher throughout, and not drawn: ${above.map(({ name }) => name).join(', ')}` : '';
  const cut = plot.id === 'output' && yRange ? `; drawn up to 2.2 times the greatest output${higher}` : '';
  return [
    figure(
      idOf(subject, `plot-${plot.id}`),
      first.title,
      {
        ...specOf(first, drawn),
        height: plot.height ?? 200,
        logX: plot.logX ?? false,
        ...(yRange ? { yRange } : {}),
        ...(plot.along ? { marks: sectionEnds(subject) } : {}),
      },
      cut,
    ),
  ];
}

/** Plots of one revision. */
export function curvesSection(subject: ReportSubject): ReportSection {
  const { prediction } = subject;
  const still = prediction.output.flows
    ? []
    : [
        paragraph(
          'Nothing comes out at the set speed, so what melt would do on its way is not drawn; temperatures and granules are.',
          'warning',
        ),
      ];
  return {
    id: idOf(subject, 'curves'),
    title: titleOf(subject, 'Curves'),
    blocks: [...still, ...shownPlots.flatMap((plot) => plotOf(subject, plot))],
  };
}

/** Plots of several revisions, one line a revision, the same style in each. */
export function overlaidFigures(subjects: readonly ReportSubject[]): Block[] {
  return overlaidPlots.flatMap(({ id, name, logX = false }): Block[] => {
    const series = subjects.flatMap(({ presentation, design }, style) => {
      const found = presentation.series.find((one) => one.id === id && (name === '' || one.name === name));
      return found && hasValues(found)
        ? [{ found, curve: { name: `revision ${design.revisionId}`, x: found.x, y: found.y, style } }]
        : [];
    });
    const [first] = series;
    if (!first) return [];
    const spec = specOf(
      first.found,
      series.map(({ curve }) => curve),
    );
    const percent = id === 'molten' || id === 'residence' ? { yRange: [0, 100] as const } : {};
    const of = name === '' ? '' : ` (${name})`;
    return [figure(`overlaid-${id}`, `${first.found.title}${of}`, { ...spec, logX, ...percent, height: 185 })];
  });
}
