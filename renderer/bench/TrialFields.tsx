/** The fields of a trial that is being typed, each with its unit and, where it does not fit, the reason. */

import { type ReactNode, useId } from 'react';
import type { Issue } from '../../core/index.ts';
import { CheckField } from '../fields/CheckField.tsx';
import { IssueText } from '../fields/IssueText.tsx';
import { unitText } from '../fields/spec.ts';
import { useProject } from '../store/project.ts';
import { benchText } from '../strings/bench.ts';
import { setBench } from './store.ts';
import {
  type DraftIssues,
  type DraftTexts,
  heaterNames,
  type NumberName,
  specOf,
  type TrialDraft,
  withRevision,
} from './trialDraft.ts';

const words = benchText.trials;

interface FieldProps {
  readonly label: string;
  readonly help: string;
  readonly unit?: string;
  /** where its issue is spoken of; null while the field was not touched */
  readonly issue: Issue | null;
  readonly children: (box: {
    id: string;
    'aria-invalid': boolean;
    'aria-describedby': string | undefined;
  }) => ReactNode;
  readonly className?: string;
}

function Field({ label, help, unit, issue, children, className }: FieldProps) {
  const id = useId();
  return (
    <div className={className ? `trial-field ${className}` : 'trial-field'} title={help}>
      <label htmlFor={id}>
        {label}
        {unit && <span className="unit"> {unit}</span>}
      </label>
      {children({ id, 'aria-invalid': issue !== null, 'aria-describedby': issue ? `${id}-issue` : undefined })}
      {issue && <IssueText id={`${id}-issue`} issue={issue} />}
    </div>
  );
}

/** A draft and its judgement. */
export interface FormParts {
  readonly draft: TrialDraft;
  readonly issues: DraftIssues;
}

const setTexts = (draft: TrialDraft, change: Partial<DraftTexts>): void =>
  setBench({ draft: { ...draft, texts: { ...draft.texts, ...change } } });

/** An empty field that must be filled is not scolded before the person tries to take the form over. */
const issueAt = ({ draft, issues }: FormParts, key: string, typed: string): Issue | null =>
  typed.trim() === '' && draft.asked !== true ? null : (issues[key] ?? null);

function NumberBox({ name, ...parts }: FormParts & { readonly name: NumberName }) {
  const { draft } = parts;
  const spec = specOf(name);
  return (
    <Field
      label={spec.label}
      help={spec.help}
      unit={unitText(spec.unit)}
      issue={issueAt(parts, name, draft.texts[name])}
    >
      {(box) => (
        <input
          {...box}
          className="number"
          type="text"
          inputMode="decimal"
          autoComplete="off"
          data-testid={`trial-${name}`}
          value={draft.texts[name]}
          placeholder={spec.optional ? '–' : undefined}
          onChange={({ target }) => setTexts(draft, { [name]: target.value })}
        />
      )}
    </Field>
  );
}

function Temperatures(parts: FormParts) {
  const { draft } = parts;
  const names = heaterNames(useProject(), draft.texts.revisionId);
  const type = (at: number, typed: string) =>
    setBench({ draft: { ...draft, temps: draft.temps.map((each, i) => (i === at ? typed : each)) } });
  return draft.temps.map((typed, i) => (
    <Field
      // biome-ignore lint/suspicious/noArrayIndexKey: heaters have no other identity than their place
      key={i}
      label={words.heater(names[i] ?? String(i + 1))}
      help={benchText.fields.setTempsC.help}
      unit="°C"
      issue={issueAt(parts, `setTempsC/${i}`, typed)}
    >
      {(box) => (
        <input
          {...box}
          className="number"
          type="text"
          inputMode="decimal"
          value={typed}
          onChange={({ target }) => type(i, target.value)}
        />
      )}
    </Field>
  ));
}

function Choice(props: {
  readonly name: 'revisionId' | 'materialId';
  readonly draft: TrialDraft;
  readonly options: readonly { readonly id: string; readonly name: string }[];
  readonly issue: Issue | null;
  choose(id: string): void;
}) {
  const { name, draft, options, issue, choose } = props;
  const chosen = draft.texts[name];
  const known = options.some(({ id }) => id === chosen);
  return (
    <Field {...benchText.fields[name]} issue={issue}>
      {(box) => (
        <select {...box} value={chosen} onChange={({ target }) => choose(target.value)}>
          {!known && <option value={chosen}>{chosen}</option>}
          {options.map((option) => (
            <option key={option.id} value={option.id}>
              {option.name === option.id ? option.id : `${option.id}: ${option.name}`}
            </option>
          ))}
        </select>
      )}
    </Field>
  );
}

function TextBox(props: FormParts & { readonly name: 'lot' | 'note' | 'excludedWhy'; readonly most: number }) {
  const { name, draft, most } = props;
  return (
    <Field {...benchText.fields[name]} className="wide" issue={props.issues[name] ?? null}>
      {(box) => (
        <input
          {...box}
          type="text"
          maxLength={most}
          value={draft.texts[name]}
          onChange={({ target }) => setTexts(draft, { [name]: target.value })}
        />
      )}
    </Field>
  );
}

/** What was set, and where. */
export function Settings(parts: FormParts) {
  const project = useProject();
  const { draft, issues } = parts;
  return (
    <>
      <Field {...benchText.fields.date} issue={issues.date ?? null}>
        {(box) => (
          <input
            {...box}
            type="date"
            value={draft.texts.date}
            onChange={({ target }) => setTexts(draft, { date: target.value })}
          />
        )}
      </Field>
      <Choice
        {...{ draft, name: 'revisionId', options: project.revisions, issue: issues.revisionId ?? null }}
        choose={(id) => setBench({ draft: withRevision(project, draft, id) })}
      />
      <Choice
        {...{ draft, name: 'materialId', options: project.materials, issue: issues.materialId ?? null }}
        choose={(id) => setTexts(draft, { materialId: id })}
      />
      <NumberBox {...parts} name="screwSpeedRpm" />
      <Temperatures {...parts} />
    </>
  );
}

/** What came out, and what was seen. */
export function Weighed(parts: FormParts) {
  const { draft } = parts;
  return (
    <>
      {(['seconds', 'grams', 'torqueNm', 'currentA', 'labL', 'labA', 'labB'] as const).map((name) => (
        <NumberBox key={name} {...parts} name={name} />
      ))}
      <TextBox {...parts} name="lot" most={120} />
      <TextBox {...parts} name="note" most={4000} />
      <div className="trial-field wide">
        <CheckField
          label={words.excluded}
          checked={draft.excluded}
          onChange={(excluded) => setBench({ draft: { ...draft, excluded } })}
        />
      </div>
      {draft.excluded && <TextBox {...parts} name="excludedWhy" most={400} />}
    </>
  );
}
