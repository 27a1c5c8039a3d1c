/** What is done with the drawing of heads: where to look, and what is laid on what. */

import { Button } from 'react-aria-components';
import type { Alignment } from '../../core/index.ts';
import { compareText } from '../strings/compare.ts';
import { moved, type Sight, zoomed } from './drawingScale.ts';
import type { DrawnHead } from './HeadDrawing.tsx';
import { setCompare, useCompare } from './store.ts';

const words = compareText.drawings;

/** The choice of what is laid on what. */
export function AlignmentChoice() {
  const alignment = useCompare((state) => state.alignment);
  return (
    <label>
      {compareText.align.label}{' '}
      <select value={alignment} onChange={(event) => setCompare({ alignment: event.target.value as Alignment })}>
        {(['feed', 'tip', 'orifice'] as const).map((id) => (
          <option key={id} value={id}>
            {compareText.align[id]}
          </option>
        ))}
      </select>
    </label>
  );
}

/** Named stretches of the base. */
function stretchesOf({ profile }: DrawnHead, whole: Sight) {
  const { barrelEnd, end, feedOpening } = profile;
  const nozzle = end - barrelEnd;
  const margin = 0.5 * (feedOpening.end - feedOpening.start);
  return {
    whole,
    feed: { from: feedOpening.start - margin, to: feedOpening.end + margin },
    outlet: { from: barrelEnd - nozzle, to: end + 0.15 * nozzle },
  };
}

/** The row above the drawing. */
export function Tools(props: {
  readonly base: DrawnHead;
  readonly whole: Sight;
  readonly sight: Sight;
  readonly isTrue: boolean;
  look(sight: Sight): void;
  setTrue(isTrue: boolean): void;
}) {
  const { base, whole, sight, isTrue, look, setTrue } = props;
  const stretches = stretchesOf(base, whole);
  const [middle, step] = [(sight.from + sight.to) / 2, (sight.to - sight.from) / 4];
  const acts: readonly (readonly [string, () => Sight])[] = [
    [words.whole, () => stretches.whole],
    [words.feed, () => stretches.feed],
    [words.outlet, () => stretches.outlet],
    [words.closer, () => zoomed(sight, 1.6, middle, whole)],
    [words.wider, () => zoomed(sight, 1 / 1.6, middle, whole)],
    [words.earlier, () => moved(sight, -step, whole)],
    [words.later, () => moved(sight, step, whole)],
  ];
  return (
    <div className="compare-tools" role="toolbar" aria-label={words.moves}>
      {acts.map(([name, act]) => (
        <Button key={name} className="tool" onPress={() => look(act())}>
          {name}
        </Button>
      ))}
      <label className="check">
        <input type="checkbox" checked={isTrue} onChange={() => setTrue(!isTrue)} /> {words.true}
      </label>
      <AlignmentChoice />
    </div>
  );
}
