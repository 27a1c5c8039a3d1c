/** What becomes of a calibration: applied, kept as a variant, or dropped. Nothing happens by itself. */

import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { CalibrationChoice, CalibrationFit } from '../../core/index.ts';
import { useProject } from '../store/project.ts';
import { benchText } from '../strings/bench.ts';
import type { FactorName } from './names.ts';
import { dropResult, isOld, type Kept } from './runs.ts';
import { keepFit } from './trials.ts';

const words = benchText.calibrate;

const isTold = ({ factors }: CalibrationFit): boolean =>
  (Object.keys(factors) as FactorName[]).some((name) => factors[name].fitted);

/** The three choices. */
export function FitChoices({ found }: { readonly found: Kept<'fit'> }) {
  const project = useProject();
  const { fit, revisionId } = found;
  const revision = project.revisions.find(({ id }) => id === revisionId);
  const [name, setName] = useState(() => words.defaultName(revisionId, fit.trialIds.length));
  const locked = revision?.locked === true;
  const ready = isTold(fit) && name.trim() !== '' && !isOld(found.from, project);
  const keep = (choice: CalibrationChoice) => {
    if (keepFit(fit, choice, revisionId, name.trim())) dropResult('fit');
  };
  const options = [
    {
      label: words.apply(revisionId),
      help: locked ? words.locked : words.applyHelp,
      disabled: !ready || locked,
      act: () => keep('apply'),
    },
    { label: words.variant, help: words.variantHelp, disabled: !ready, act: () => keep('variant') },
    { label: words.discard, help: words.discardHelp, disabled: false, act: () => dropResult('fit') },
  ];
  return (
    <section className="fit-choices" aria-label={words.choices}>
      <h3>{words.choices}</h3>
      <label className="fit-name">
        {words.name} <input type="text" maxLength={120} value={name} onChange={({ target }) => setName(target.value)} />
      </label>
      <ul>
        {options.map(({ label, help, disabled, act }) => (
          <li key={label}>
            <Button className="tool" isDisabled={disabled} onPress={act}>
              {label}
            </Button>
            <span className="quiet">{help}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}
