/** What is done with the linked views, what their colours mean, and whose they are. */

import { Button } from 'react-aria-components';
import { formatNumber, useLook } from '../look.ts';
import { scaleLength } from '../scene/frame.ts';
import { gradientOf, timeColour, timeMarks, timePlace } from '../scene/meltScale.ts';
import type { CameraMove } from '../scene/sceneStore.ts';
import { compareText } from '../strings/compare.ts';
import { AlignmentChoice } from './DrawingTools.tsx';
import type { Opened, Seen, ViewChoice } from './Machines.tsx';
import { LineSample } from './marks.tsx';
import { gridOf, type ViewPlace } from './views.ts';

const words = compareText.machines;

/** One scale for all views, s. */
function Legend({ meanTime }: { readonly meanTime: number }) {
  useLook();
  const last = timeMarks.length - 1;
  return (
    <div className="shared-ramp">
      <span className="quiet">{words.legend}</span>
      <div className="ramp">
        <div className="ramp-bar" style={{ background: gradientOf(timeColour) }} />
        {timeMarks.map((mark, index) => (
          <div key={mark} className="ramp-mark" style={{ left: `${100 * timePlace(mark)}%` }}>
            <span className="ramp-seconds">
              {index === 0 ? '≤ ' : index === last ? '≥ ' : ''}
              {formatNumber(mark * meanTime, 2)} s
            </span>
          </div>
        ))}
      </div>
    </div>
  );
}

const places: readonly ViewPlace[] = ['whole', 'feed', 'outlet'];
const moves: readonly (readonly [CameraMove, string, string])[] = [
  ['left', '↺', words.left],
  ['right', '↻', words.right],
  ['up', '↑', words.up],
  ['down', '↓', words.down],
  ['in', '+', words.closer],
  ['out', '−', words.wider],
];

function Opening({ choice, choose }: { readonly choice: ViewChoice; choose(choice: ViewChoice): void }) {
  return (
    <>
      <label>
        {words.how}{' '}
        <select value={choice.how} onChange={(event) => choose({ ...choice, how: event.target.value as Opened })}>
          {(['opened', 'sliced', 'closed'] as const).map((how) => (
            <option key={how} value={how}>
              {words[how]}
            </option>
          ))}
        </select>
      </label>
      {choice.how === 'sliced' && !choice.melt && (
        <label>
          {words.sliceAt}{' '}
          <input
            type="range"
            min={-1}
            max={1}
            step={0.02}
            value={choice.slice}
            onChange={(event) => choose({ ...choice, slice: Number(event.target.value) })}
          />
        </label>
      )}
      <label className="check">
        <input type="checkbox" checked={choice.melt} onChange={() => choose({ ...choice, melt: !choice.melt })} />{' '}
        {words.melt}
      </label>
    </>
  );
}

/** The row above the views. */
export function MachineTools(props: {
  readonly choice: ViewChoice;
  readonly meanTime: number | null;
  choose(choice: ViewChoice): void;
  look(to: ViewPlace): void;
  move(by: CameraMove): void;
}) {
  const { choice, choose, meanTime, look, move } = props;
  return (
    <>
      <div className="compare-tools" role="toolbar" aria-label={words.title}>
        {places.map((place) => (
          <Button key={place} className="tool" onPress={() => look(place)}>
            {words[place]}
          </Button>
        ))}
        {moves.map(([by, sign, name]) => (
          <Button key={by} className="tool sign" aria-label={name} onPress={() => move(by)}>
            <span title={name}>{sign}</span>
          </Button>
        ))}
        <Opening {...{ choice, choose }} />
        <AlignmentChoice />
      </div>
      {choice.melt && choice.how !== 'closed' && meanTime !== null && <Legend meanTime={meanTime} />}
    </>
  );
}

/** Names over the views, and one scale bar for all. */
export function ViewLabels(props: {
  readonly seen: readonly Seen[];
  readonly choice: ViewChoice;
  readonly zoom: number;
}) {
  const { seen, choice, zoom } = props;
  const { columns, rows } = gridOf(seen.length);
  const length = scaleLength(zoom, 140);
  return (
    <>
      <div
        className="view-labels"
        style={{ gridTemplateColumns: `repeat(${columns}, 1fr)`, gridTemplateRows: `repeat(${rows}, 1fr)` }}
      >
        {seen.map(({ id, name, place, solved }) => (
          <div key={id} className="view-label">
            <p>
              <LineSample place={place} /> <b>{id}</b> {name}
              {choice.melt && !solved?.fields && <span className="quiet"> – {words.noFields}</span>}
            </p>
          </div>
        ))}
      </div>
      <div className="scale-bar" aria-hidden="true">
        <span className="scale-line" style={{ width: `${length * zoom}px` }} />
        {length} mm
      </div>
    </>
  );
}
