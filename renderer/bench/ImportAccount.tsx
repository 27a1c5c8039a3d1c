/** Every line of a table accounted for: faulty ones with place and remedy, remarks, and those without a trial. */

import type { BenchImport, CsvFault } from '../../core/index.ts';
import { benchText } from '../strings/bench.ts';

const words = benchText.import;

/** Most entries of a list that are drawn. */
const mostShown = 100;

function Faults({ faults, label }: { readonly faults: readonly CsvFault[]; readonly label: string }) {
  return (
    <table className="bench-table" aria-label={label}>
      <thead>
        <tr>
          {[words.line, words.column, words.standsThere, words.problem, words.allowed].map((head) => (
            <th key={head} scope="col">
              {head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {faults.slice(0, mostShown).map((fault) => (
          <tr key={`${fault.line} ${fault.column} ${fault.message}`}>
            <td className="num">{fault.line}</td>
            <td>{fault.column === 0 ? '–' : `${fault.column} ${fault.header}`}</td>
            <td className="words">{fault.text || '–'}</td>
            <td className="words">{fault.message}</td>
            <td className="words quiet">{fault.allowed}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function More({ count }: { readonly count: number }) {
  return count > mostShown ? <p className="quiet">{words.more(count - mostShown)}</p> : null;
}

/** The account. */
export function ImportAccount({ read }: { readonly read: BenchImport }) {
  const { errors, warnings, skips, faultyLines, trials, rows } = read;
  return (
    <div className="import-account">
      <p data-testid="account">{words.account(rows, trials.length, faultyLines, skips.length)}</p>
      {errors.length > 0 && (
        <details open>
          <summary className="issue">✕ {words.errors(faultyLines)}</summary>
          <Faults faults={errors} label={words.errors(faultyLines)} />
          <More count={errors.length} />
        </details>
      )}
      {warnings.length > 0 && (
        <details>
          <summary>▲ {words.warnings(warnings.length)}</summary>
          <Faults faults={warnings} label={words.warnings(warnings.length)} />
          <More count={warnings.length} />
        </details>
      )}
      {skips.length > 0 && (
        <details>
          <summary>{words.skips(skips.length)}</summary>
          <ul>
            {skips.slice(0, mostShown).map(({ line, reason }) => (
              <li key={line}>
                {words.line} {line}: {reason}
              </li>
            ))}
          </ul>
          <More count={skips.length} />
        </details>
      )}
    </div>
  );
}
