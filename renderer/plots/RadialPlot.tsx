/** Speed and age across tip and nozzle at the picked position. */

import { useMemo } from 'react';
import type uPlot from 'uplot';
import { fromSi, type RadialProfile } from '../../core/index.ts';
import { formatNumber } from '../look.ts';
import { meltText } from '../strings/melt.ts';
import { axis, Chart, type Ink } from './Chart.tsx';
import { timeAxis } from './residenceMarks.ts';

const words = meltText.across;

const shown = (unit: string) => (_: uPlot, value: number | null) =>
  value === null ? '' : `${formatNumber(value, 3)} ${unit}`;

/** Speed on the left, time on the right and logarithmic: it runs over decades towards the wall. */
function options(ink: Ink): Omit<uPlot.Options, 'width' | 'height'> {
  const [speed, age] = ink.series;
  const line = (label: string, unit: string, scale: string, stroke: string | undefined, more: uPlot.Series = {}) => ({
    ...{ label, scale, width: 2, points: { show: false }, value: shown(unit), ...(stroke ? { stroke } : {}), ...more },
  });
  return {
    scales: {
      x: { time: false },
      v: { range: (_u, _min, max) => [0, max > 0 ? 1.1 * max : 1] },
      t: { distr: 3, range: (_u, min, max) => [0.9 * min, 1.1 * max] },
    },
    axes: [
      axis(ink, `${words.radius}, mm`, { size: 26 }),
      axis(ink, `${words.speed}, mm/s`, { scale: 'v', size: 46 }),
      axis(ink, `${words.age}, s`, { ...timeAxis, scale: 't', side: 1, size: 46, grid: { show: false } }),
    ],
    series: [
      { label: words.radius, value: shown('mm') },
      line(words.speed, 'mm/s', 'v', speed),
      line(words.age, 's', 't', age, { dash: [6, 4] }),
    ],
  };
}

/** The chart. */
export function RadialPlot({ profile }: { readonly profile: RadialProfile }) {
  const data = useMemo<uPlot.AlignedData>(
    () => [
      Array.from(profile.r, (r) => fromSi(r, 'mm')),
      Array.from(profile.speed, (speed) => fromSi(speed, 'mm/s')),
      Array.from(profile.age),
    ],
    [profile],
  );
  return <Chart label={words.headTitle} data={data} options={options} height={190} />;
}
