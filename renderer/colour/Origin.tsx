/** Where the colour comes from: parts, distribution in the output, dead spots. */

import type { ColourPrediction, Prediction } from '../../core/index.ts';
import { formatNumber, formatQuantity } from '../look.ts';
import { colourText } from '../strings/colour.ts';

const words = colourText;

const percent = (share: number): string => formatQuantity(share, '%', 2);

/** A small field of a colour. */
export const Chip = ({ fill }: { readonly fill: string }) => (
  <span className="chip" style={{ background: fill }} aria-hidden="true" />
);

function Parts({ origin }: { readonly origin: ColourPrediction['origin'] }) {
  if (origin.length === 0) return <p className="quiet">{words.noOrigin}</p>;
  return (
    <table className="colour-table">
      <thead>
        <tr>
          <th scope="col">{words.part}</th>
          <th scope="col">{words.share}</th>
          <th scope="col">{words.stay}</th>
          <th scope="col">{words.heat}</th>
        </tr>
      </thead>
      <tbody>
        {origin.map(({ part, share, time, temperature }) => (
          <tr key={part}>
            <th scope="row">{words.parts[part]}</th>
            <td>
              <span className="share-bar" aria-hidden="true">
                <span className="share-filled" style={{ width: `${100 * share}%` }} />
              </span>
              {percent(share)}
            </td>
            <td>{formatQuantity(time, 's', 3)}</td>
            <td>{formatQuantity(temperature, '°C', 3)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Distribution({ distribution }: { readonly distribution: ColourPrediction['distribution'] }) {
  if (distribution.length === 0) return null;
  return (
    <div>
      <h3>{words.distribution}</h3>
      <ol className="distribution" title={words.distributionHelp}>
        {distribution.map(({ share, dE00, srgb }) => (
          <li key={share}>
            <span className="swatch-colour" style={{ background: srgb }} />
            <span>{share > 0 ? words.upTo(percent(share)) : words.palest}</span>
            <span>ΔE00 {formatNumber(dE00, 2)}</span>
          </li>
        ))}
      </ol>
    </div>
  );
}

/** What a spot adds to the stream; nobody reads less than a thousandth. */
const addedText = (added: number): string =>
  added < 0.001 ? words.addedBelow(formatNumber(0.001, 1)) : `ΔE00 ${formatNumber(added, 1)}`;

interface SpotsProps {
  readonly bleed: ColourPrediction['bleed'];
  /** the same places as they are listed beside the machine, with their ages */
  readonly listed: Prediction['dead']['spots'];
}

function Spots({ bleed, listed }: SpotsProps) {
  if (bleed.length === 0) return <p className="quiet">{words.noSpots}</p>;
  const head = words.spot;
  const ageOf = ({ part, where }: (typeof bleed)[number]): string => {
    const found = listed.find((spot) => spot.part === part && spot.where === where);
    return found ? formatQuantity(found.meanAge, 's', 2) : '–';
  };
  return (
    <>
      <table className="colour-table">
        <thead>
          <tr>
            {[head.place, head.age, head.held, head.colour, head.share, head.mixed, head.streak].map((label) => (
              <th key={label} scope="col">
                {label}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {bleed.map((spot) => (
            <tr key={`${spot.part}-${spot.z}-${spot.where}`}>
              <th scope="row">
                {words.parts[spot.part as keyof typeof words.parts] ?? spot.part}: {spot.where}
              </th>
              <td>{ageOf(spot)}</td>
              <td>{formatQuantity(spot.held, 's', 2)}</td>
              <td>
                <Chip fill={spot.srgb} /> ΔE00 {formatNumber(spot.dE00, 2)}
              </td>
              <td>
                {percent(spot.shareLow)} … {percent(spot.share)}
              </td>
              <td>{addedText(spot.dE00Added)}</td>
              <td>
                ΔE00 {formatNumber(spot.dE00Streak, 2)} … {formatNumber(spot.dE00StreakHigh, 2)}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="quiet">{words.heldHelp}</p>
    </>
  );
}

/** The section. */
export function Origin({ prediction: { colour, dead } }: { readonly prediction: Prediction }) {
  return (
    <section aria-label={words.origin}>
      <h2>{words.origin}</h2>
      <div className="colour-pair">
        <Parts origin={colour.origin} />
        <Distribution distribution={colour.distribution} />
      </div>
      <h3 title={words.spotsHelp}>{words.spots}</h3>
      <Spots bleed={colour.bleed} listed={dead.spots} />
    </section>
  );
}
