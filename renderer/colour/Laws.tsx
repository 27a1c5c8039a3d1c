/** What every degradation law of the material comes to, in numbers and words. */

import type { LawOutcome } from '../../core/index.ts';
import { formatNumber } from '../look.ts';
import { colourText } from '../strings/colour.ts';

const words = colourText.laws;

/** The section; nothing where the material has no law. */
export function Laws({ laws }: { readonly laws: readonly LawOutcome[] }) {
  if (laws.length === 0) return null;
  return (
    <section aria-label={words.title}>
      <h2>{words.title}</h2>
      <table className="colour-table laws">
        <thead>
          <tr>
            <th scope="col">{words.law}</th>
            <th scope="col">{words.mean}</th>
            <th scope="col">{words.worst}</th>
            <th scope="col">{words.means}</th>
          </tr>
        </thead>
        <tbody>
          {laws.map(({ id, observed, drivesColour, extentMean, extentWorst, means, outside }) => (
            <tr key={id}>
              <th scope="row">
                {observed} <small>{id}</small> {drivesColour && <span className="badge">{words.colour}</span>}
              </th>
              <td>{formatNumber(extentMean, 2)}</td>
              <td>{formatNumber(extentWorst, 2)}</td>
              <td>
                {means} {outside && <span className="doubt">▲ {outside}</span>}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
