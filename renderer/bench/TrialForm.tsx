/** The form in which a trial is typed: nothing of the log changes before it is taken over. */

import { useEffect, useRef } from 'react';
import { Button } from 'react-aria-components';
import { useProject } from '../store/project.ts';
import { benchText } from '../strings/bench.ts';
import { setBench } from './store.ts';
import { Settings, Weighed } from './TrialFields.tsx';
import { judgeDraft, type TrialDraft } from './trialDraft.ts';
import { addTrial, changeTrial } from './trials.ts';

const words = benchText.trials;

/** The form for a draft. */
export function TrialForm({ draft }: { readonly draft: TrialDraft }) {
  const project = useProject();
  const form = useRef<HTMLFormElement>(null);
  const { trial, issues } = judgeDraft(project, draft);
  const take = () => {
    if (!trial) return setBench({ draft: { ...draft, asked: true } });
    // a trial that was removed meanwhile comes back with what was typed
    if (!project.benchLog.some(({ id }) => id === draft.of)) addTrial(trial);
    else changeTrial(trial.id, trial);
    setBench({ draft: null });
  };
  useEffect(() => {
    const refused = form.current?.querySelector<HTMLElement>('[aria-invalid="true"]');
    (refused ?? form.current?.querySelector<HTMLElement>('[data-testid="trial-seconds"]'))?.focus();
  }, []);
  const title = draft.of === null ? words.newTitle : words.editTitle(draft.of);
  return (
    <form
      ref={form}
      className="trial-form"
      aria-label={title}
      onSubmit={(event) => {
        event.preventDefault();
        take();
      }}
    >
      <h3>{title}</h3>
      <div className="trial-fields">
        <Settings {...{ draft, issues }} />
        <Weighed {...{ draft, issues }} />
      </div>
      <div className="acts">
        <Button type="submit" className="tool strong">
          {draft.of === null ? words.addIt : words.takeOver}
        </Button>
        <Button className="tool" onPress={() => setBench({ draft: null })}>
          {words.cancel}
        </Button>
        {draft.asked && !trial && <span className="issue">{words.checkFields}</span>}
      </div>
    </form>
  );
}
