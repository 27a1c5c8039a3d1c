/** How a revision's line is told from the others: by its colour, its dashes and its letter. */

import { mostCompared } from './store.ts';

/** Dashes by place among the chosen revisions, px; the first is unbroken. */
const dashes: readonly (readonly number[])[] = [[], [9, 4], [2, 3], [12, 3, 2, 3], [5, 2], [14, 6]];

/** Dashes at a place. */
export const dashOf = (place: number): readonly number[] => dashes[place % dashes.length] ?? [];

/** The style sheet's name of the colour at a place; plots read the same ones. */
export const colourOf = (place: number): string => `var(--series-${(place % mostCompared) + 1})`;

/** A piece of a revision's line. */
export function LineSample({ place }: { readonly place: number }) {
  return (
    <svg className="line-sample" width={38} height={10} aria-hidden="true">
      <line
        x1={1}
        x2={37}
        y1={5}
        y2={5}
        stroke={colourOf(place)}
        strokeWidth={2.5}
        strokeDasharray={dashOf(place).join(' ')}
      />
    </svg>
  );
}

/** One revision in a legend. */
export interface Named {
  readonly id: string;
  readonly name: string;
}

/** Line, letter and name of each revision. */
export function LineLegend({ revisions }: { readonly revisions: readonly Named[] }) {
  return (
    <ul className="line-legend">
      {revisions.map(({ id, name }, place) => (
        <li key={id}>
          <LineSample place={place} /> <b>{id}</b> {name}
        </li>
      ))}
    </ul>
  );
}
