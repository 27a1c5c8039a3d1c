/** The colour that a picture gives, its doubts, and the trial it is taken over into. */

import { useState } from 'react';
import { Button } from 'react-aria-components';
import { formatNumber, type PhotoColour } from '../../core/index.ts';
import { announce } from '../files.ts';
import { useProject } from '../store/project.ts';
import { benchText } from '../strings/bench.ts';
import { setBench, useBench } from './store.ts';
import { colourTrial } from './trials.ts';

const words = benchText.photo;

/** The trial being entered, as a choice beside the trials of the log. */
const draftChoice = '';

/** To a tenth: a picture tells no more. */
const tenth = (value: number): number => Math.round(10 * value) / 10;

function TakeOver({ colour }: { readonly colour: PhotoColour }) {
  const { benchLog } = useProject();
  const draft = useBench((state) => state.draft);
  const newest = benchLog.at(-1)?.id;
  const [chosen, choose] = useState<string | null>(null);
  const into = chosen ?? (draft ? draftChoice : newest);
  if (into === undefined) return <p className="quiet">{words.noTrials}</p>;
  const lab = [tenth(colour.lab[0]), tenth(colour.lab[1]), tenth(colour.lab[2])] as const;
  const take = () => {
    if (into !== draftChoice) {
      colourTrial(into, lab);
      return announce('good', words.taken(into));
    }
    if (!draft) return;
    const [labL, labA, labB] = lab.map(String) as [string, string, string];
    setBench({ tab: 'trials', draft: { ...draft, texts: { ...draft.texts, labL, labA, labB } } });
  };
  return (
    <div className="bench-tools">
      <label className="pick">
        {words.into}
        <select value={into} onChange={({ target }) => choose(target.value)}>
          {draft && <option value={draftChoice}>{words.draft}</option>}
          {[...benchLog].reverse().map(({ id, date }) => (
            <option key={id} value={id}>
              {id}, {date}
            </option>
          ))}
        </select>
      </label>
      <Button className="tool strong" onPress={take}>
        {words.take}
      </Button>
    </div>
  );
}

/** The result. */
export function PhotoResult({ colour }: { readonly colour: PhotoColour }) {
  const { lab, srgb, doubts } = colour;
  return (
    <section className="photo-result" aria-label={words.result}>
      <h3>{words.result}</h3>
      <div className="photo-colour">
        <svg viewBox="0 0 60 40" aria-hidden="true">
          <rect width="60" height="40" fill={srgb.hex} />
        </svg>
        <output data-testid="photo-lab">
          L* {formatNumber(tenth(lab[0]), 3)}, a* {formatNumber(tenth(lab[1]), 3)}, b* {formatNumber(tenth(lab[2]), 3)}
        </output>
      </div>
      {!srgb.inGamut && <p className="quiet">{words.noGamut}</p>}
      {doubts.length > 0 && (
        <ul className="photo-doubts" aria-label={words.doubts}>
          {doubts.map((doubt) => (
            <li key={doubt} className="bench-old">
              ▲ {doubt}
            </li>
          ))}
        </ul>
      )}
      <TakeOver colour={colour} />
    </section>
  );
}
