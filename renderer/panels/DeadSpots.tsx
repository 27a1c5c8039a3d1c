/** The list of places where melt lingers: how much, how old, why, and what removes it. */

import { Button } from 'react-aria-components';
import type { DeadSpot, Prediction, SpotPlace } from '../../core/index.ts';
import { formatNumber, formatQuantity } from '../look.ts';
import { useSpotPlaces } from '../scene/openPlanes.ts';
import { showSpot } from '../store/melt.ts';
import { useView } from '../store/view.ts';
import { meltText } from '../strings/melt.ts';

const words = meltText.spots;

/** Number, unit and multiple of the mean. */
const ageText = ({ meanAge }: DeadSpot, mean: number): string =>
  `${words.sinceMelting(formatQuantity(meanAge, 's', 2))}, ${formatNumber(meanAge / mean, 2)} ${meltText.timesMean}`;

function Fate({ spot }: { readonly spot: DeadSpot }) {
  if (!spot.srgb) return null;
  return (
    <span className="spot-colour">
      <svg viewBox="0 0 16 12" role="img" aria-label={words.colour}>
        <title>{words.colour}</title>
        <rect width="16" height="12" fill={spot.srgb} />
      </svg>
      {typeof spot.dE00 === 'number' && `ΔE00 ${formatNumber(spot.dE00, 2)}`}
    </span>
  );
}

interface SpotProps {
  readonly spot: DeadSpot;
  readonly place: SpotPlace;
  readonly number: number;
  readonly mean: number;
}

function Spot({ spot, place, number, mean }: SpotProps) {
  const chosen = useView((state) => state.mark?.spot === number);
  return (
    <li>
      <Button
        className={chosen ? 'spot chosen' : 'spot'}
        aria-pressed={chosen}
        data-z={place.z}
        onPress={() => showSpot(number, spot.where, place)}
      >
        <span className="spot-number" aria-hidden="true">
          <span>{number}</span>
        </span>
        <span className="spot-where">
          <b>{words.parts[spot.part]}</b> {spot.where}
        </span>
        <span className="spot-size">{formatQuantity(spot.volume, 'mm³', 2)}</span>
        <span className="spot-age">
          {ageText(spot, mean)} · {words.causes[spot.cause]} <Fate spot={spot} />
        </span>
        <span className="spot-remedy">{spot.remedy}</span>
      </Button>
    </li>
  );
}

/** The list of a prediction with solved fields. */
export function DeadSpots({ prediction }: { readonly prediction: Prediction }) {
  const { spots } = prediction.dead;
  const places = useSpotPlaces(prediction);
  return (
    <div className="spots">
      <h3>
        {words.title} <span className="quiet">{spots.length}</span>
      </h3>
      {spots.length > 0 && <p className="quiet spots-help">{words.help}</p>}
      {spots.length === 0 && <p className="quiet">{words.none}</p>}
      <ol>
        {spots.map((spot, index) => (
          <Spot
            key={`${spot.part} ${spot.where}`}
            {...{ spot, place: places[index] ?? spot, number: index + 1, mean: prediction.residence.mean }}
          />
        ))}
      </ol>
    </div>
  );
}
