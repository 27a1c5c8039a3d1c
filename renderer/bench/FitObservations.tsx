/** A calibration figure by figure: what each trial measured, what was predicted before and after, how much it counts. */

import { type CalibrationFit, formatNumber, formatQuantity } from '../../core/index.ts';
import { benchText } from '../strings/bench.ts';
import { errorText } from './figures.ts';
import { HeadRow } from './HeadRow.tsx';

const words = benchText.calibrate;

type Observation = CalibrationFit['observations'][number];

/** Below this weight a figure hardly pulls; the fit counts its trial as an outlier. */
const hardly = 0.3;
/** Most figures that are drawn. */
const mostShown = 300;

function figure(kind: Observation['kind'], value: number): string {
  if (kind === 'rate') return formatQuantity(value, 'g/min', 3);
  return kind === 'torque' ? formatQuantity(value, 'N·m', 3) : `ΔE00 ${formatNumber(value, 3)}`;
}

function Row({ one }: { readonly one: Observation }) {
  const { trialId, kind, measured, predictedBefore, predictedAfter, after, leaveOneOut, weight } = one;
  const out = weight < hardly;
  return (
    <tr className={out ? 'bench-row outlier' : ''}>
      <th scope="row">{trialId}</th>
      <td>{words.figures[kind]}</td>
      <td className="num">{figure(kind, measured)}</td>
      <td className="num">{figure(kind, predictedBefore)}</td>
      <td className="num">{figure(kind, predictedAfter)}</td>
      <td className="num">{errorText(after)}</td>
      <td className="num">{errorText(leaveOneOut)}</td>
      <td>{out ? `▲ ${words.hardly}` : `${formatNumber(100 * weight, 2)} %`}</td>
    </tr>
  );
}

/** The table, folded away at first. */
export function FitObservations({ fit }: { readonly fit: CalibrationFit }) {
  const { observations } = fit;
  if (observations.length === 0) return null;
  const heads = [
    benchText.trials.id,
    words.figure,
    words.measured,
    words.predictedBefore,
    words.predictedAfter,
    words.difference,
    words.leaveOneOut,
    words.weight,
  ];
  return (
    <details>
      <summary>{words.byFigure(observations.length)}</summary>
      <table className="bench-table" data-testid="observations">
        <HeadRow heads={heads} />
        <tbody>
          {observations.slice(0, mostShown).map((one) => (
            <Row key={`${one.trialId} ${one.kind}`} one={one} />
          ))}
        </tbody>
      </table>
    </details>
  );
}
