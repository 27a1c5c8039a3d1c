/** What the fields say at the picked position, and the slider that picks one. */

import { useMemo } from 'react';
import { meltStart, type Prediction, radialProfile, type SolvedFields, stationSection } from '../../core/index.ts';
import { formatQuantity } from '../look.ts';
import { CrossSection } from '../plots/CrossSection.tsx';
import { RadialPlot } from '../plots/RadialPlot.tsx';
import { type AcrossPainted, pickStation, setMelt, useMelt } from '../store/melt.ts';
import { useView } from '../store/view.ts';
import { meltText } from '../strings/melt.ts';

const words = meltText.across;

/** Stretch of z that holds melt, m. */
function meltRange(prediction: Prediction, fields: SolvedFields): readonly [number, number] {
  const { stations } = prediction;
  const screwEnd = stations.z[stations.count - 1] ?? 0;
  const headEnd = fields.head ? fields.head.z.reduce((most, z) => Math.max(most, z), screwEnd) : screwEnd;
  return [fields.channel.length > 0 ? meltStart(stations, fields.channel) : screwEnd, headEnd];
}

/** The marked position, or else one near the end of the channel, where melt is old. */
const usePicked = (range: readonly [number, number], screwEnd: number): number => {
  const marked = useView((state) => state.mark?.z ?? null);
  return marked ?? range[0] + 0.8 * (screwEnd - range[0]);
};

function Slider({ range, z }: { readonly range: readonly [number, number]; readonly z: number }) {
  return (
    <label className="across-slider">
      <span>{words.position}</span>
      <input
        type="range"
        min={range[0]}
        max={range[1]}
        step={(range[1] - range[0]) / 400}
        value={Math.min(range[1], Math.max(range[0], z))}
        aria-valuetext={formatQuantity(z, 'mm', 4)}
        onChange={(event) => pickStation(Number(event.target.value))}
      />
      <output>{formatQuantity(z, 'mm', 4)}</output>
    </label>
  );
}

function Coloured() {
  const across = useMelt((state) => state.across);
  return (
    <select
      aria-label={words.coloured}
      value={across}
      onChange={(event) => setMelt({ across: event.target.value as AcrossPainted })}
    >
      {Object.entries(words.quantities).map(([id, name]) => (
        <option key={id} value={id}>
          {name}
        </option>
      ))}
    </select>
  );
}

/** Why there is nothing to show at z. */
function missing(prediction: Prediction, range: readonly [number, number], z: number): string {
  const screwEnd = prediction.stations.z[prediction.stations.count - 1] ?? 0;
  if (z >= range[0] && z <= screwEnd) return words.noSection;
  const [from, to] = range.map((end) => formatQuantity(end, 'mm', 3));
  return `${words.outside} ${from} ${words.to} ${to}.`;
}

/** Title, slider and plot. */
export function Across({ prediction, fields }: { readonly prediction: Prediction; readonly fields: SolvedFields }) {
  const range = useMemo(() => meltRange(prediction, fields), [prediction, fields]);
  const screwEnd = prediction.stations.z[prediction.stations.count - 1] ?? 0;
  const z = usePicked(range, screwEnd);
  const section = useMemo(
    () => stationSection(prediction.stations, fields.channel, z),
    [prediction.stations, fields.channel, z],
  );
  const profile = useMemo(
    () => (z > screwEnd && fields.head ? radialProfile(fields.head, z) : null),
    [fields.head, screwEnd, z],
  );
  return (
    <div className="across">
      <header>
        <h3>{profile ? words.headTitle : words.title}</h3>
        {section && <Coloured />}
      </header>
      <Slider {...{ range, z }} />
      {section && <CrossSection {...{ section, prediction }} />}
      {!section && profile && <RadialPlot profile={profile} />}
      {!section && !profile && <p className="quiet">{missing(prediction, range, z)}</p>}
    </div>
  );
}
