/** Viscosity against shear rate over the working temperatures, both axes by decades. */

import { useMemo } from 'react';
import type uPlot from 'uplot';
import { type Material, type PresentedSeries, viscosityCurve } from '../../../core/index.ts';
import { byDecades, decades, reading } from '../../fit/logAxes.ts';
import { axis, Chart, type Ink } from '../../plots/Chart.tsx';
import { text } from '../../strings.ts';

const words = text.describe.granulate;

/** Height of the small chart, px. */
const height = 170;
/** The middle is drawn whole, the ends of the window broken, so that they can be told apart without colour. */
const dashes: readonly (number[] | undefined)[] = [[7, 4], undefined, [2, 3]];

function optionsFor(names: readonly string[], first: PresentedSeries | undefined) {
  return (ink: Ink): Omit<uPlot.Options, 'width' | 'height'> => ({
    scales: { x: { time: false, distr: 3 }, y: { distr: 3, range: (_u, least, most) => decades(least, most) } },
    cursor: { drag: { x: false, y: false } },
    axes: [
      axis(ink, `${first?.xLabel}, ${first?.xUnit}`, { size: 26, ...byDecades }),
      axis(ink, `${first?.yLabel}, ${first?.yUnit}`, { size: 52, ...byDecades }),
    ],
    series: [
      { label: first?.xLabel ?? '', value: reading(first?.xUnit ?? '') },
      ...names.map((label, index): uPlot.Series => {
        const stroke = ink.series[index === 1 ? 0 : index === 0 ? 2 : 1];
        return {
          label,
          ...(stroke ? { stroke } : {}),
          ...(dashes[index] ? { dash: dashes[index] } : {}),
          width: 2,
          points: { show: false },
          value: reading(first?.yUnit ?? ''),
        };
      }),
    ],
  });
}

const drawable = (values: Float64Array): (number | null)[] =>
  Array.from(values, (value) => (value > 0 && Number.isFinite(value) ? value : null));

/** The chart; nothing where no law is known. */
export function ViscosityPlot({ material }: { readonly material: Material }) {
  const curves = useMemo(() => viscosityCurve(material), [material]);
  const names = curves.map(({ name }) => name).join('|');
  // biome-ignore lint/correctness/useExhaustiveDependencies: of the curves only the names stand in the options
  const options = useMemo(() => optionsFor(names.split('|'), curves[0]), [names]);
  const data = useMemo<uPlot.AlignedData>(
    () => [Array.from(curves[0]?.x ?? []), ...curves.map(({ y }) => drawable(y))],
    [curves],
  );
  if (curves.length === 0) return null;
  return (
    <div className="curve viscosity">
      <h4>{words.curve}</h4>
      <Chart label={words.curve} data={data} options={options} height={height} />
    </div>
  );
}
