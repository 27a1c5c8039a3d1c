/** Fresh, mean and worst colour, and the figures beside them. */

import { useState } from 'react';
import type { Lab, Prediction } from '../../core/index.ts';
import { formatNumber } from '../look.ts';
import { AskButton, DoubtSign, Explanation } from '../panels/Explanation.tsx';
import { colourText } from '../strings/colour.ts';

const words = colourText;

/** To a hundredth, which no eye tells: what rounding leaves of a zero would read as a number. */
export const labText = (lab: Lab): string =>
  lab.map((value) => formatNumber(Math.round(100 * value) / 100 || 0, 3)).join(' / ');

/** Two digits, the usual fineness of a colour difference. */
const difference = (value: number | null): string => (value === null ? '–' : formatNumber(value, 2));

function Swatch(props: {
  readonly name: string;
  readonly help: string;
  readonly fill: string | null;
  readonly lab: Lab | null;
}) {
  const { name, help, fill, lab } = props;
  if (!fill || !lab) return null;
  return (
    <figure className="swatch" title={help}>
      <span className="swatch-colour" style={{ background: fill }} />
      <figcaption>
        <b>{name}</b>
        <span className="swatch-lab">L*a*b* {labText(lab)}</span>
        <span className="swatch-lab">{fill}</span>
      </figcaption>
    </figure>
  );
}

/** Whether a difference is accepted; the word says it, not only the colour. */
function Accepted({ value, limit }: { readonly value: number | null; readonly limit: number }) {
  if (value === null) return null;
  const fine = value <= limit;
  const limitText = formatNumber(limit, 2);
  return (
    <span className={fine ? 'accepted' : 'refused-colour'}>
      {fine ? `✓ ${words.within(limitText)}` : `▲ ${words.beyond(limitText)}`}
    </span>
  );
}

/** The doubt of a figure; a law without ranges has none stated, which is not the same as being sure. */
function Range({ low, high }: { readonly low: number; readonly high: number }) {
  return <small>{low === high ? words.noRange : words.range(difference(low), difference(high))}</small>;
}

function Figures({ prediction, acceptable }: { readonly prediction: Prediction; readonly acceptable: number }) {
  const { dE00Mean, dE00Worst, range, indices } = prediction.colour;
  const arrow = (values: readonly (number | null)[]) => values.map(difference).join(' → ');
  return (
    <dl className="colour-figures">
      <dt>{words.figure.mean}</dt>
      <dd>
        <b>{difference(dE00Mean)}</b> <Accepted value={dE00Mean} limit={acceptable} />
        {range && <Range low={range.dE00MeanLow} high={range.dE00MeanHigh} />}
      </dd>
      <dt>{words.figure.worst}</dt>
      <dd>
        <b>{difference(dE00Worst)}</b> <Accepted value={dE00Worst} limit={acceptable} />
        {range && <Range low={range.dE00WorstLow} high={range.dE00WorstHigh} />}
      </dd>
      {indices && (
        <>
          <dt>{words.figure.yellowness}</dt>
          <dd>{arrow([indices.yellownessFresh, indices.yellownessMean, indices.yellownessWorst])}</dd>
          <dt>{words.figure.browning}</dt>
          <dd>
            {arrow([indices.browningMean, indices.browningWorst])}
            <small>{indices.note}</small>
          </dd>
        </>
      )}
    </dl>
  );
}

/** The first thing seen: three colours and what they come to. */
export function Swatches({ prediction, acceptable }: { readonly prediction: Prediction; readonly acceptable: number }) {
  const [open, setOpen] = useState(false);
  const { colour } = prediction;
  return (
    <section aria-label={words.figures} className="colour-head">
      <div className="swatch-row">
        <Swatch
          name={words.swatches.fresh}
          help={words.swatchHelp.fresh}
          fill={colour.srgbFresh}
          lab={colour.labFresh}
        />
        <Swatch name={words.swatches.mean} help={words.swatchHelp.mean} fill={colour.srgb} lab={colour.labMean} />
        <Swatch
          name={words.swatches.worst}
          help={words.swatchHelp.worst}
          fill={colour.srgbWorst}
          lab={colour.labWorst}
        />
      </div>
      <div>
        <Figures {...{ prediction, acceptable }} />
        <p className="quiet">
          <DoubtSign doubt={colour.basis.doubt} />
          {prediction.fields ? words.solved : words.estimate}{' '}
          <AskButton label={words.title} open={open} onPress={() => setOpen(!open)} />
        </p>
        {open && <Explanation basis={colour.basis} inputs={[]} place="degradation#colour" />}
      </div>
      <p className="quiet colour-screen">
        {colour.gamutNote ? `▲ ${colour.gamutNote} ` : ''}
        {words.screen}
      </p>
    </section>
  );
}
