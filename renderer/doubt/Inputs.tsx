/** Everything that is not known well, with its range and who states it. */

import { Button } from 'react-aria-components';
import { type DoubtInput, type DoubtInputs, formatNumber } from '../../core/index.ts';
import { doubtText } from '../strings/doubt.ts';
import { removeRange } from './ranges.ts';

const words = doubtText;

const number = (value: number): string => formatNumber(value, 4);

function Row({ input }: { readonly input: DoubtInput }) {
  const { path, label, unit, nominal, low, high, from, why } = input;
  return (
    <tr>
      <th scope="row" title={why}>
        {label}
      </th>
      <td>{number(low)}</td>
      <td>{number(nominal)}</td>
      <td>{number(high)}</td>
      <td className="unit-cell">{unit}</td>
      <td className="from-cell">
        {words.froms[from]}
        {from === 'user' && (
          <Button className="tiny" aria-label={words.removed(label)} onPress={() => removeRange(path, label)}>
            <span title={words.remove}>✕</span>
          </Button>
        )}
      </td>
      <td className="why-cell" title={why}>
        {why}
      </td>
    </tr>
  );
}

/** Ranges left out, with the reason; a user's own can be taken away here too. */
function Skipped({ skipped, own }: { readonly skipped: DoubtInputs['skipped']; readonly own: ReadonlySet<string> }) {
  if (skipped.length === 0) return null;
  return (
    <details>
      <summary>{words.skipped(skipped.length)}</summary>
      <ul className="grounds">
        {skipped.map(({ path, reason }) => (
          <li key={path}>
            {path}: {reason}{' '}
            {own.has(path) && (
              <Button className="link" onPress={() => removeRange(path, path)}>
                {words.remove}
              </Button>
            )}
          </li>
        ))}
      </ul>
    </details>
  );
}

/** The table; `own` are places whose range this project states. */
export function Inputs({ found, own }: { readonly found: DoubtInputs; readonly own: ReadonlySet<string> }) {
  return (
    <>
      {found.inputs.length === 0 ? (
        <p className="quiet">{words.none}</p>
      ) : (
        <table className="doubt-table doubt-inputs">
          <thead>
            <tr>
              <th scope="col">{words.input}</th>
              <th scope="col">{words.low}</th>
              <th scope="col">{words.nominal}</th>
              <th scope="col">{words.high}</th>
              <th scope="col">
                <span className="unseen">{words.unit}</span>
              </th>
              <th scope="col">{words.from}</th>
              <th scope="col">{words.why}</th>
            </tr>
          </thead>
          <tbody>
            {found.inputs.map((input) => (
              <Row key={input.path} input={input} />
            ))}
          </tbody>
        </table>
      )}
      <Skipped skipped={found.skipped} own={own} />
    </>
  );
}
