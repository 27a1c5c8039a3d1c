/** Inputs by their strength on one figure, as bars with the noise floor. */

import { useState } from 'react';
import { type DoubtSummary, formatNumber, formatQuantity, type Influence } from '../../core/index.ts';
import { doubtText } from '../strings/doubt.ts';

const words = doubtText.rank;

/** Bars shown; weaker ones say nothing more. */
const shownBars = 10;

/** The figure looked at first. */
const firstOutput = 'dE00Mean';

/** A bar from the middle to either side, with the floor of chance marked on both. */
function Bar({ influence, floor }: { readonly influence: Influence; readonly floor: number }) {
  const { strength, aboveNoise } = influence;
  const reach = Math.min(1, Math.abs(strength)) * 50;
  return (
    <svg className="rank-bar" viewBox="0 0 100 12" preserveAspectRatio="none" aria-hidden="true">
      <rect className="band-rail" x="0" y="5.5" width="100" height="1" />
      <rect
        className={aboveNoise ? 'rank-fill' : 'rank-fill weak'}
        x={strength < 0 ? 50 - reach : 50}
        y="2"
        width={reach}
        height="8"
      />
      {[-1, 1].map((side) => (
        <line
          key={side}
          className="rank-floor"
          x1={50 + side * 50 * Math.min(1, floor)}
          x2={50 + side * 50 * Math.min(1, floor)}
          y1="0"
          y2="12"
        />
      ))}
    </svg>
  );
}

function Row({ influence, floor }: { readonly influence: Influence; readonly floor: number }) {
  const { label, strength, aboveNoise } = influence;
  const effect = strength < 0 ? words.falls : words.rises;
  return (
    <tr className={aboveNoise ? '' : 'quiet'}>
      <th scope="row">{label}</th>
      <td>
        <Bar influence={influence} floor={floor} />
      </td>
      <td>{formatNumber(strength, 2)}</td>
      <td className="effect-cell">{aboveNoise ? effect : words.below}</td>
    </tr>
  );
}

/** The section. */
export function Ranking({ summary }: { readonly summary: DoubtSummary }) {
  const usable = summary.influences.filter(({ ranked }) => ranked.length > 0);
  const [chosen, choose] = useState(firstOutput);
  const now = usable.find(({ output }) => output === chosen) ?? usable[0];
  if (!now) return <p className="quiet">{words.none}</p>;
  return (
    <section className="sweep" aria-label={words.title}>
      <h2>{words.title}</h2>
      <label>
        {words.of}{' '}
        <select value={now.output} onChange={(event) => choose(event.target.value)}>
          {usable.map(({ output, label }) => (
            <option key={output} value={output}>
              {label}
            </option>
          ))}
        </select>
      </label>
      <table className="doubt-table rank-table">
        <tbody>
          {now.ranked.slice(0, shownBars).map((influence) => (
            <Row key={influence.path} influence={influence} floor={now.noiseFloor} />
          ))}
        </tbody>
      </table>
      <p className="quiet">
        {words.methods[now.method]}. {words.noise(formatNumber(now.noiseFloor, 2))}{' '}
        {now.explained !== null && words.explained(formatQuantity(now.explained, '%', 2))}
      </p>
    </section>
  );
}
