/** Which revision is better for what, in words made from the numbers. */

import { betterForWhat, heldTogether } from '../../core/index.ts';
import { useLook } from '../look.ts';
import { compareText } from '../strings/compare.ts';
import { type Compared, comparable } from './runs.ts';
import { writerOf } from './writer.ts';

const words = compareText.answer;

/** Revisions whose calculation broke, which says nothing of their design. */
const brokenOf = (compared: readonly Compared[]) =>
  compared.flatMap(({ id, found: { refusal, fault } }) =>
    fault === undefined || refusal !== undefined ? [] : [{ id, fault }],
  );

/** The paragraph and what it rests on. */
export function Answer({ compared }: { readonly compared: readonly Compared[] }) {
  const look = useLook();
  const { made, solved, solvedCount, count } = comparable(compared);
  const predictions = made.map((one) => one.made.prediction);
  const { paragraph } = betterForWhat(predictions, [], writerOf(look));
  const waiting = made.length < count;
  return (
    <section className="compare-answer" aria-label={words.title}>
      <h3>{words.title}</h3>
      {waiting && <p className="quiet">{words.waiting}</p>}
      {!waiting && predictions.length < 2 && <p className="quiet">{words.none}</p>}
      {compared.flatMap(({ id, found: { refusal } }) =>
        refusal === undefined
          ? []
          : [
              <p key={id} className="issue">
                {words.refused(id, refusal)}
              </p>,
            ],
      )}
      {brokenOf(compared).map(({ id, fault }) => (
        <p key={id} className="issue">
          {words.broken(id, fault)}
        </p>
      ))}
      {paragraph !== '' && !(waiting && predictions.length < 2) && (
        <p className="better-for-what">{heldTogether(paragraph)}</p>
      )}
      {!waiting && predictions.length > 1 && (
        <p className="quiet">{solved ? words.solved : words.estimates(solvedCount, count)}</p>
      )}
    </section>
  );
}
