/** What the two kinds of strokes mean, where there are any. */

import { searchText } from '../strings/search.ts';
import type { Ground } from './hatching.ts';

const words = searchText.result;

/** A swatch with its meaning. */
function Swatch({ kind, text }: { readonly kind: 'hole' | 'missed'; readonly text: string }) {
  return (
    <span className="hatch-key">
      <span className={`hatch-swatch ${kind}`} aria-hidden="true" /> {text}
    </span>
  );
}

/** The legend; empty where nothing is hatched. */
export function HatchLegend({ grounds }: { readonly grounds: readonly Ground[] }) {
  const hole = grounds.includes('hole');
  const missed = grounds.includes('missed');
  if (!hole && !missed) return null;
  return (
    <p className="hatch-legend">
      {hole && <Swatch kind="hole" text={words.hole} />}
      {missed && <Swatch kind="missed" text={words.missed} />}
    </p>
  );
}
