/** The rows of the table of checks. */

import type { CheckResult } from '../../core/index.ts';
import { checksText as words } from '../strings/checks.ts';
import { errorText, withUnit } from './rows.ts';

/** Error against limit: a bar beside the number. */
function Share({ error, limit }: CheckResult) {
  if (error === null) return null;
  return (
    <span className="checks-share" aria-hidden="true">
      <span style={{ width: `${Math.min(100, limit > 0 ? (100 * error) / limit : 0)}%` }} />
    </span>
  );
}

function Row({ check }: { readonly check: CheckResult }) {
  return (
    <tr data-check={check.id}>
      <th scope="row">
        {check.quantity}
        <br />
        <small className="quiet">{words.stages[check.stage]}</small>
      </th>
      <td className="checks-figure">{withUnit(check, check.expected)}</td>
      <td className="checks-figure">{withUnit(check, check.got)}</td>
      <td className="checks-figure">
        {errorText(check, check.error)}
        <Share {...check} />
      </td>
      <td className="checks-figure">{errorText(check, check.limit)}</td>
      <td>{check.pass ? `✓ ${words.within}` : `▲ ${words.outside}${check.fault ? `: ${check.fault}` : ''}`}</td>
      <td className="checks-source">
        {check.source}
        <br />
        <small className="quiet">{words.kinds[check.kind]}</small>
      </td>
    </tr>
  );
}

/** All rows that are wanted. */
export function ChecksTable({ results }: { readonly results: readonly CheckResult[] }) {
  if (results.length === 0) return <p className="quiet">{words.none}</p>;
  return (
    <table className="checks-table">
      <colgroup>
        <col className="checks-words" />
        <col className="checks-number" span={4} />
        <col className="checks-status" />
        <col className="checks-words" />
      </colgroup>
      <thead>
        <tr>
          {Object.entries(words.heads).map(([key, head]) => (
            <th key={key} scope="col" className={/expected|got|error|limit/.test(key) ? 'checks-figure' : undefined}>
              {head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {results.map((check) => (
          <Row key={check.id} check={check} />
        ))}
      </tbody>
    </table>
  );
}
