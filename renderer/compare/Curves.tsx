/** Curves of the chosen revisions laid over each other. */

import { useMemo } from 'react';
import type uPlot from 'uplot';
import type { Project } from '../../core/index.ts';
import { useLook } from '../look.ts';
import { Chart, curveHeight } from '../plots/Chart.tsx';
import type { ColourAnswer, ColourAsk } from '../solve/colourJob.ts';
import { useJob } from '../solve/job.ts';
import { startColourWorker } from '../solve/startJobs.ts';
import { useProject } from '../store/project.ts';
import { compareText } from '../strings/compare.ts';
import type { PartProps } from './Compare.tsx';
import { type ComparedCurves, type CurveSource, colourCurves, curveIds, curvesOf } from './curveData.ts';
import { curveOptions } from './curveOptions.ts';
import { LineLegend } from './marks.tsx';
import { type Compared, comparable } from './runs.ts';

const words = compareText.curves;

/** One plot; `order` is the chosen revisions, which decides the lines. */
function Plot({ curves, order }: { readonly curves: ComparedCurves; readonly order: readonly string[] }) {
  const look = useLook();
  const lines = curves.lines.filter(({ y }) => y.some((value) => value !== null));
  const shape = `${lines.map(({ id }) => id).join()}/${order.join()}/${curves.xUnit}/${curves.yUnit}`;
  // biome-ignore lint/correctness/useExhaustiveDependencies: options depend on which lines there are, not on data
  const options = useMemo(() => {
    const ids = lines.map(({ id }) => id);
    return curveOptions(
      curves,
      ids,
      ids.map((id) => order.indexOf(id)),
    );
  }, [shape, look]);
  const data = useMemo<uPlot.AlignedData>(
    () => [curves.x, ...curves.lines.filter(({ y }) => y.some((value) => value !== null)).map(({ y }) => y)],
    [curves],
  );
  if (lines.length === 0 || curves.x.length < 2) return <p className="quiet">{words.none}</p>;
  return <Chart label={curves.title} data={data} options={options} height={curveHeight} />;
}

/** Print speeds at which colours are compared, as shares of the set one; own choice. */
const speedShares = [0.25, 0.5, 0.75, 1, 1.5, 2, 3];

/** Why no revision has a colour; null while one has, or none is worked out yet. */
function colourless(compared: readonly Compared[]): string | null {
  const { made } = comparable(compared);
  const colours = made.map((one) => one.made.prediction.colour);
  return colours.every(({ dE00Mean }) => dE00Mean === null) ? (colours[0]?.reason ?? null) : null;
}

function useColourCurves(project: Project, compared: readonly Compared[], wanted: boolean) {
  const look = useLook();
  const list = compared.flatMap(({ id, found }) => (found.refusal === undefined ? [id] : [])).join('\n');
  const keys = compared.map(({ key }) => key).join();
  // biome-ignore lint/correctness/useExhaustiveDependencies: asked anew when what is described changes
  const ask = useMemo<ColourAsk | null>(() => {
    if (!wanted) return null;
    const speeds = speedShares.map((share) => (share * project.print.speedMmPerS) / 1000);
    return { kind: 'speeds', project, revisionIds: list.split('\n'), speeds, fields: 'formula' };
  }, [list, keys, wanted]);
  const { answers, state, fault } = useJob<ColourAnswer>(startColourWorker, ask);
  const curves = useMemo(() => {
    const runs = answers.flatMap((answer) => (answer.kind === 'speeds' ? [answer] : []));
    const known = runs.map((run) => ({
      id: run.revisionId,
      points: run.runs.flatMap(({ point }) => (point ? [point] : [])),
    }));
    return colourCurves(known, look);
  }, [answers, look]);
  return { curves, state, fault };
}

function ColourPlot({
  compared,
  order,
}: {
  readonly compared: readonly Compared[];
  readonly order: readonly string[];
}) {
  const project = useProject();
  const reason = colourless(compared);
  const { curves, state, fault } = useColourCurves(project, compared, reason === null);
  return (
    <figure>
      <figcaption>{words.colour}</figcaption>
      {reason !== null ? (
        <p className="quiet">
          {words.none} {reason}
        </p>
      ) : state === 'running' ? (
        <p className="quiet">{words.colourWaiting}</p>
      ) : fault !== null ? (
        <p role="alert">
          {words.colourFault} {fault}
        </p>
      ) : (
        <Plot curves={curves} order={order} />
      )}
      {reason === null && <p className="quiet">{words.colourNote}</p>}
    </figure>
  );
}

/** The part of the dialog. */
export function Curves({ revisions, compared }: PartProps) {
  const look = useLook();
  const { made } = comparable(compared);
  const order = useMemo(() => revisions.map(({ id }) => id), [revisions]);
  const plots = useMemo(() => {
    const sources = made.flatMap(({ id, made: one }): CurveSource[] => {
      const revision = revisions.find((candidate) => candidate.id === id);
      return revision ? [{ revision, made: one }] : [];
    });
    return curveIds.flatMap((id) => (id === 'colour' ? [] : [curvesOf(id, sources, look)]));
  }, [made, revisions, look]);
  return (
    <section aria-label={words.title} className="compare-curves">
      <LineLegend revisions={revisions} />
      <div className="curve-grid">
        {plots.map((curves) => (
          <figure key={curves.id}>
            <figcaption>{curves.title}</figcaption>
            <Plot curves={curves} order={order} />
          </figure>
        ))}
        <ColourPlot compared={compared} order={order} />
      </div>
    </section>
  );
}
