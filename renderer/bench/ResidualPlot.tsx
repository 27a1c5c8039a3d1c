/** Measured over predicted, trial by trial in the order of the log, on a logarithmic axis around 1. */

import { type BenchRow, formatNumber } from '../../core/index.ts';
import { benchText } from '../strings/bench.ts';
import { Mark, rowKind } from './marks.tsx';
import { ratioTicks } from './plotScale.ts';

const words = benchText.measured;

const [width, height] = [440, 330];
const frame = { left: 52, right: 12, top: 12, bottom: 42 };

/** The drawing. */
export function ResidualPlot({ rows }: { readonly rows: readonly BenchRow[] }) {
  const points = rows.flatMap((row) => (row.ratio !== null && row.ratio > 0 ? [{ row, ratio: row.ratio }] : []));
  const ticks = ratioTicks(points.map(({ ratio }) => ratio));
  const [low, high] = [Math.log(ticks[0] ?? 0.5), Math.log(ticks.at(-1) ?? 2)];
  const y = (ratio: number) =>
    height - frame.bottom - ((height - frame.top - frame.bottom) * (Math.log(ratio) - low)) / (high - low);
  const x = (i: number) => frame.left + ((width - frame.left - frame.right) * (i + 0.5)) / Math.max(1, points.length);
  const every = Math.ceil(points.length / 12);
  return (
    <figure className="bench-plot">
      <figcaption>{words.residuals}</figcaption>
      <svg viewBox={`0 0 ${width} ${height}`} role="img" aria-label={words.residuals}>
        {ticks.map((tick) => (
          <g key={tick}>
            <line
              className={tick === 1 ? 'agree' : 'grid'}
              x1={frame.left}
              x2={width - frame.right}
              y1={y(tick)}
              y2={y(tick)}
            />
            <text x={frame.left - 6} y={y(tick) + 4} textAnchor="end">
              {formatNumber(tick, 3)}
            </text>
          </g>
        ))}
        {points.map(({ row, ratio }, i) => (
          <g key={row.trialId}>
            <title>{`${row.trialId}: ${formatNumber(ratio, 3)}. ${row.reason ?? ''}`}</title>
            <line className="stem" x1={x(i)} x2={x(i)} y1={y(1)} y2={y(ratio)} />
            <Mark kind={rowKind(row)} x={x(i)} y={y(ratio)} />
            {i % every === 0 && (
              <text x={x(i)} y={height - frame.bottom + 16} textAnchor="middle">
                {row.trialId}
              </text>
            )}
          </g>
        ))}
        <text x={(frame.left + width - frame.right) / 2} y={height - 8} textAnchor="middle" className="axis-name">
          {benchText.trials.id}
        </text>
        <text
          transform={`translate(13 ${(frame.top + height - frame.bottom) / 2}) rotate(-90)`}
          textAnchor="middle"
          className="axis-name"
        >
          {words.ratio}
        </text>
      </svg>
    </figure>
  );
}
