/** Where no colour can be said: why, and what can be told instead. */

import { useState } from 'react';
import { formatQuantity, type Prediction } from '../../core/index.ts';
import { AskButton, Explanation } from '../panels/Explanation.tsx';
import { colourText } from '../strings/colour.ts';

const words = colourText;

/** The section in place of swatches and charts. */
export function NoColour({ prediction }: { readonly prediction: Prediction }) {
  const [open, setOpen] = useState(false);
  const { colour, output, residence } = prediction;
  const seconds = (time: number) => formatQuantity(time, 's', 3);
  return (
    <section aria-label={words.missing}>
      <h2>
        {words.missing} <AskButton label={words.title} open={open} onPress={() => setOpen(!open)} />
      </h2>
      <p className="missing-colour">▲ {colour.reason}</p>
      {open && <Explanation basis={colour.basis} inputs={[]} place="degradation#colour" />}
      <h3>{words.told}</h3>
      {output.flows && <p>{words.stays(seconds(residence.mean), seconds(residence.t99))}</p>}
      {!output.flows && <p>{words.toldStill}</p>}
      {output.flows && colour.laws.length === 0 && <p>{words.toldNothing}</p>}
      {colour.laws.map(({ id, observed, means }) => (
        <p key={id}>
          <b>{observed}.</b> {means}
        </p>
      ))}
    </section>
  );
}
