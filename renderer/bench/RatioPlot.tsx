/** Measured over predicted output, with the line on which both agree. */

import { type BenchRow, formatNumber, fromSi } from '../../core/index.ts';
import { benchText } from '../strings/bench.ts';
import { Mark, rowKind } from './marks.tsx';
import { ticksUpTo } from './plotScale.ts';

const words = benchText.measured;

const [width, height] = [440, 330];
const frame = { left: 52, right: 12, top: 12, bottom: 42 };

const gramsPerMinute = (flow: number): number => fromSi(flow, 'g/min');

function Axes({ ticks, x, y }: { readonly ticks: readonly number[]; x(v: number): number; y(v: number): number }) {
  const most = ticks.at(-1) ?? 1;
  return (
    <>
      {ticks.map((tick) => (
        <g key={tick}>
          <line className="grid" x1={x(tick)} x2={x(tick)} y1={y(0)} y2={y(most)} />
          <line className="grid" x1={x(0)} x2={x(most)} y1={y(tick)} y2={y(tick)} />
          <text x={x(tick)} y={height - frame.bottom + 16} textAnchor="middle">
            {formatNumber(tick, 3)}
          </text>
          <text x={frame.left - 6} y={y(tick) + 4} textAnchor="end">
            {formatNumber(tick, 3)}
          </text>
        </g>
      ))}
      <line className="agree" x1={x(0)} y1={y(0)} x2={x(most)} y2={y(most)} />
      <text x={(frame.left + width - frame.right) / 2} y={height - 8} textAnchor="middle" className="axis-name">
        {words.predicted}
      </text>
      <text
        transform={`translate(13 ${(frame.top + height - frame.bottom) / 2}) rotate(-90)`}
        textAnchor="middle"
        className="axis-name"
      >
        {words.measuredAxis}
      </text>
    </>
  );
}

/** How far down each name moves so that names of neighbours do not cover each other. */
function nameShifts(places: readonly { readonly x: number; readonly y: number }[]): readonly number[] {
  const taken: { x: number; y: number }[] = [];
  return places.map(({ x, y }) => {
    let at = y;
    while (taken.some((other) => Math.abs(other.x - x) < 26 && Math.abs(other.y - at) < 12)) at += 12;
    taken.push({ x, y: at });
    return at - y;
  });
}

/** The drawing; rows without a prediction are not in it. */
export function RatioPlot({ rows }: { readonly rows: readonly BenchRow[] }) {
  const points = rows.flatMap((row) =>
    row.predicted === null
      ? []
      : [{ row, predicted: gramsPerMinute(row.predicted), measured: gramsPerMinute(row.measured) }],
  );
  const ticks = ticksUpTo(Math.max(0, ...points.flatMap(({ predicted, measured }) => [predicted, measured])) * 1.05);
  const most = ticks.at(-1) ?? 1;
  const x = (value: number) => frame.left + ((width - frame.left - frame.right) * value) / most;
  const y = (value: number) => height - frame.bottom - ((height - frame.top - frame.bottom) * value) / most;
  const shifts = nameShifts(points.map(({ predicted, measured }) => ({ x: x(predicted), y: y(measured) })));
  return (
    <figure className="bench-plot">
      <figcaption>
        {words.plot} <span className="quiet">{words.plotHelp}</span>
      </figcaption>
      <svg viewBox={`0 0 ${width} ${height}`} role="img" aria-label={words.plot}>
        <Axes {...{ ticks, x, y }} />
        {points.map(({ row, predicted, measured }, i) => (
          <g key={row.trialId}>
            <title>
              {`${row.trialId}: ${formatNumber(measured, 3)} / ${formatNumber(predicted, 3)} g/min. ${row.reason ?? ''}`}
            </title>
            <Mark kind={rowKind(row)} x={x(predicted)} y={y(measured)} />
            {(points.length <= 12 || row.outlier) && (
              <text x={x(predicted) + 9} y={y(measured) - 5 + (shifts[i] ?? 0)} className="point-name">
                {row.trialId}
              </text>
            )}
          </g>
        ))}
      </svg>
    </figure>
  );
}
