/** The table of predicted numbers with their differences against the base. */

import { type ComparedRow, type ComparedValue, comparedText, comparePredictions } from '../../core/index.ts';
import { formatNumber, useLook } from '../look.ts';
import { compareText } from '../strings/compare.ts';
import { type Compared, comparable } from './runs.ts';
import { writerOf } from './writer.ts';

const words = compareText.numbers;

const signs: Readonly<Record<ComparedValue['verdict'], string>> = {
  better: '▲',
  worse: '▼',
  different: '≠',
  'smaller than the model error': '≈',
  same: '=',
  unknown: '',
};

function changeText({ change, verdict }: ComparedValue): string {
  if (verdict === 'same' || change === null) return compareText.verdicts[verdict];
  const size = Math.abs(100 * change) < 0.05 ? 1 : 2;
  return `${compareText.verdicts[verdict]}, ${change > 0 ? '+' : '−'}${formatNumber(Math.abs(100 * change), size)}\u00a0%`;
}

function Cell(props: { readonly row: ComparedRow; readonly value: ComparedValue; readonly isBase: boolean }) {
  const { row, value, isBase } = props;
  const text = comparedText(value.value, row, writerOf(useLook()));
  if (isBase) return <td className="base-cell">{text}</td>;
  return (
    <td className={`verdict-${value.verdict.split(' ')[0]}`}>
      {text}
      <span className="change">{`${signs[value.verdict]} ${changeText(value)}`}</span>
    </td>
  );
}

const errorText = (share: number): string => (share === 0 ? words.none : `±${formatNumber(100 * share, 2)}\u00a0%`);

function Head({ ids, at }: { readonly ids: readonly string[]; readonly at: number }) {
  return (
    <thead>
      <tr>
        <th scope="col">{words.value}</th>
        {ids.map((id, i) => (
          <th key={id} scope="col">
            {id}
            {i === at ? (
              <span className="badge">{words.base}</span>
            ) : (
              // the room of the change beside the number, so that the letter stands over the number
              <span className="change" aria-hidden="true" />
            )}
          </th>
        ))}
        <th scope="col">
          <span title={words.errorHelp}>{words.error}</span>
        </th>
      </tr>
    </thead>
  );
}

/** The table; the base is the first that has a prediction where the chosen one has none. */
export function Numbers({ compared, base }: { readonly compared: readonly Compared[]; readonly base: string | null }) {
  const { made, count } = comparable(compared);
  if (made.length < 2)
    return <p className="quiet">{made.length < count ? compareText.answer.waiting : compareText.answer.none}</p>;
  const at = Math.max(
    0,
    made.findIndex(({ id }) => id === base),
  );
  const comparison = comparePredictions(
    made.map((one) => one.made.prediction),
    at,
  );
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a table wider than the window must be scrolled from the keyboard
    <section className="table-scroll" aria-label={words.scroll} tabIndex={0}>
      <table className={made.length < 4 ? 'compare-table few' : 'compare-table'}>
        <caption>{words.title}</caption>
        <Head ids={made.map(({ id }) => id)} at={at} />
        <tbody>
          {comparison.rows.map((row) => (
            <tr key={row.id}>
              <th scope="row">{row.label}</th>
              {row.values.map((value, i) => (
                <Cell key={made[i]?.id} {...{ row, value }} isBase={i === at} />
              ))}
              <td className="quiet">{errorText(row.modelError)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="quiet table-key">
        {words.key} {words.errorHelp}
      </p>
    </section>
  );
}
