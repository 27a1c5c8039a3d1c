/** What a calibration found: factors with limits, what the trials do not tell, errors before and after. */

import type { CalibrationFit } from '../../core/index.ts';
import { benchText } from '../strings/bench.ts';
import { FitObservations } from './FitObservations.tsx';
import { errorText, idsText, limitsText, timesText } from './figures.ts';
import type { FactorName } from './names.ts';

const words = benchText.calibrate;

/** Factors in the order of the words. */
const names = Object.keys(benchText.factors) as FactorName[];

function Factors({ fit }: { readonly fit: CalibrationFit }) {
  return (
    <table className="bench-table" data-testid="factors">
      <thead>
        <tr>
          {[words.factor, words.value, words.limits, words.remark].map((head) => (
            <th key={head} scope="col">
              {head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {names.map((name) => {
          const { fitted, value, low, high, reason } = fit.factors[name];
          return (
            <tr key={name} className={fitted ? '' : 'left-out'}>
              <th scope="row">{benchText.factors[name].label}</th>
              <td className="num strong">{fitted ? timesText(value) : `– ${words.held}`}</td>
              <td className="num">{fitted ? limitsText(low, high) : '–'}</td>
              <td className="words">{reason ?? ''}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

function Errors({ fit }: { readonly fit: CalibrationFit }) {
  const { before, after, leaveOneOut } = fit.error;
  const rows = [
    ['before', words.before, before],
    ['after', words.after, after],
    ['leaveOneOut', words.leaveOneOut, leaveOneOut],
  ] as const;
  const widest = Math.max(...rows.map(([, , error]) => error?.rms ?? 0), 1e-6);
  return (
    <table className="bench-table errors" data-testid="errors">
      <caption>{words.error}</caption>
      <tbody>
        {rows.map(([key, name, error]) => (
          <tr key={key}>
            <th scope="row">{name}</th>
            <td className="num strong">{error ? errorText(error.rms) : words.untold}</td>
            <td>
              <span className="bar" aria-hidden="true">
                <span className="bar-fill" style={{ width: `${(100 * (error?.rms ?? 0)) / widest}%` }} />
              </span>
            </td>
            <td className="quiet">{error && `${words.medianError} ${errorText(error.median)}`}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** The report. */
export function FitReport({ fit }: { readonly fit: CalibrationFit }) {
  const found = names.some((name) => fit.factors[name].fitted);
  return (
    <div className="fit-report">
      <div className="fit-tables">
        <Factors fit={fit} />
        <Errors fit={fit} />
      </div>
      <p className={fit.converged ? 'quiet' : 'bench-old'}>
        {fit.converged ? words.converged : `▲ ${words.notConverged}`} {words.evaluations(fit.evaluations, fit.rounds)}
        {found && fit.freedom < 3 && ` ${words.wide}`}
      </p>
      <FitObservations fit={fit} />
      {fit.outliers.length > 0 && (
        <p className="bench-old">
          ▲ {words.outliers}: {idsText(fit.outliers)}.
        </p>
      )}
      {fit.skipped.length > 0 && (
        <details>
          <summary>
            {words.skipped}: {fit.skipped.length}
          </summary>
          <ul>
            {fit.skipped.slice(0, 100).map(({ trialId, reason }) => (
              <li key={`${trialId} ${reason}`}>
                {trialId}: {reason}
              </li>
            ))}
          </ul>
        </details>
      )}
    </div>
  );
}
