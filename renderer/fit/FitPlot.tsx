/** Readings with the fitted law and its band, both axes by decades. */

import { useMemo } from 'react';
import type uPlot from 'uplot';
import { unitLabel } from '../../core/index.ts';
import { axis, Chart, type Ink } from '../plots/Chart.tsx';
import { fitText as words } from '../strings/fit.ts';
import { byDecades, decades, reading } from './logAxes.ts';
import type { FitDrawing } from './protocol.ts';

/** Height of the chart, px. */
const height = 290;
/** Series of one curve: lower and upper end of its band, the law, the readings. */
const perCurve = 4;
/** Broken in ways of their own, so that curves can be told apart without colour. */
const dashes: readonly (readonly number[])[] = [[], [8, 4], [2, 3], [12, 3, 2, 3], [5, 2], [1, 2]];

/** Share of colour in a band, as two hexadecimal digits. */
const thin = '2b';

const viscosityReading = reading(unitLabel('Pa·s'));

function seriesOf(temperature: string, colour: string, dash: readonly number[]): uPlot.Series[] {
  const edge: uPlot.Series = { label: words.band, class: 'unlisted', points: { show: false }, width: 0 };
  return [
    edge,
    edge,
    {
      label: words.fitted(temperature),
      stroke: colour,
      width: 2,
      ...(dash.length > 0 ? { dash: [...dash] } : {}),
      points: { show: false },
      value: viscosityReading,
    },
    {
      label: words.measured(temperature),
      stroke: colour,
      class: 'dots',
      paths: () => null,
      points: { show: true, size: 7, fill: colour, stroke: colour },
      value: viscosityReading,
    },
  ];
}

const outlierSeries = (ink: Ink): uPlot.Series => ({
  label: words.outlier,
  stroke: ink.mark,
  class: 'dots',
  paths: () => null,
  points: { show: true, size: 14, width: 2, stroke: ink.mark, fill: 'transparent' },
  value: viscosityReading,
});

function optionsFor(temperatures: readonly string[], span: readonly [number, number], withOutliers: boolean) {
  return (ink: Ink): Omit<uPlot.Options, 'width' | 'height'> => {
    const colours = temperatures.map((_, k) => ink.series[k % ink.series.length] ?? ink.text);
    return {
      scales: {
        x: { time: false, distr: 3, range: (_u, least, most) => [least, most] },
        y: { distr: 3, range: () => decades(span[0], span[1]) },
      },
      cursor: { drag: { x: false, y: false } },
      axes: [
        axis(ink, `${words.shearRate}, ${unitLabel('1/s')}`, { size: 28, ...byDecades }),
        axis(ink, `${words.viscosity}, ${unitLabel('Pa·s')}`, { size: 58, ...byDecades }),
      ],
      bands: colours.map((colour, k) => ({
        series: [perCurve * k + 2, perCurve * k + 1] as [number, number],
        fill: `${colour}${thin}`,
      })),
      series: [
        { label: words.shearRate, value: reading(unitLabel('1/s')) },
        ...temperatures.flatMap((temperature, k) => seriesOf(temperature, colours[k] ?? '', dashes[k] ?? [])),
        ...(withOutliers ? [outlierSeries(ink)] : []),
      ],
    };
  };
}

/** The chart. */
export function FitPlot({ drawing }: { readonly drawing: FitDrawing }) {
  const { curves, span, outliers, rates, temperatures } = drawing;
  const withOutliers = outliers.some((one) => one !== null);
  const options = useMemo(
    () =>
      optionsFor(
        curves.map(({ temperature }) => temperature),
        span,
        withOutliers,
      ),
    [curves, span, withOutliers],
  );
  const data = useMemo(
    () =>
      [
        rates,
        ...curves.flatMap(({ low, high, value, points }) => [low, high, value, points]),
        ...(withOutliers ? [outliers] : []),
      ] as uPlot.AlignedData,
    [rates, curves, outliers, withOutliers],
  );
  return (
    <div className="fit-plot">
      <Chart label={words.plot} data={data} options={options} height={height} />
      {curves.length < temperatures && <p className="quiet">{words.someDrawn(curves.length, temperatures)}</p>}
    </div>
  );
}
