/** What the colours of the melt mean, over the 3D view: seconds, and multiples of the mean. */

import { formatNumber } from '../look.ts';
import { gradientOf, timeColour, timeMarks, timePlace } from '../scene/meltScale.ts';
import { type Painted, setMelt, useMelt } from '../store/melt.ts';
import { meltText } from '../strings/melt.ts';

/** A bar of colours with marks; `mean` in s, or null where only multiples make sense. */
export function TimeBar({ mean }: { readonly mean: number | null }) {
  const last = timeMarks.length - 1;
  return (
    // biome-ignore lint/a11y/useSemanticElements: a legend is no set of fields
    <div className="ramp" role="group" aria-label={meltText.timeLegend}>
      <div className="ramp-bar" aria-hidden="true" style={{ background: gradientOf(timeColour) }} />
      {timeMarks.map((mark, index) => (
        <div key={mark} className="ramp-mark" style={{ left: `${100 * timePlace(mark)}%` }}>
          <span className="ramp-multiple">
            {index === 0 ? '≤' : index === last ? '≥' : ''}
            {mark === 1 ? meltText.mean : `${mark}×`}
          </span>
          {mean !== null && <span className="ramp-seconds">{formatNumber(mark * mean, 2)} s</span>}
        </div>
      ))}
    </div>
  );
}

/** The legend with the choice of quantity. */
export function MeltLegend({ mean, old }: { readonly mean: number; readonly old: boolean }) {
  const painted = useMelt((state) => state.painted);
  return (
    <section className="melt-legend" aria-label={meltText.legend} data-painted={painted}>
      <select
        aria-label={meltText.quantity}
        value={painted}
        title={meltText.quantityHelp[painted]}
        onChange={(event) => setMelt({ painted: event.target.value as Painted })}
      >
        {Object.entries(meltText.quantities).map(([id, name]) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
      </select>
      <TimeBar mean={painted === 'age' ? mean : null} />
      {old && <p className="ramp-old">{meltText.states.old}</p>}
    </section>
  );
}
