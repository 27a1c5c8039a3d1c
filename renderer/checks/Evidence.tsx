/** Every check against the outside world, run here and now. */

import { useMemo, useState } from 'react';
import { Button } from 'react-aria-components';
import { useStore } from 'zustand';
import type { CheckResult } from '../../core/index.ts';
import { DialogFrame } from '../panels/DialogFrame.tsx';
import { type Heard, useJob } from '../solve/job.ts';
import { setView, useView } from '../store/view.ts';
import { checksText as words } from '../strings/checks.ts';
import { asText, type Choice, chosen } from './rows.ts';
import type { CheckAnswer } from './solve/worker.ts';
import { startChecks } from './startWorker.ts';
import { evidenceStore } from './store.ts';
import { ChecksTable } from './Table.tsx';

const ask = {};

/** How far it is, and what it came to. */
function Account(props: {
  readonly heard: Heard<CheckAnswer>;
  readonly results: readonly CheckResult[];
  stop(): void;
}) {
  const { heard, results, stop } = props;
  const total = heard.answers[0]?.total ?? 0;
  const passed = results.filter(({ pass }) => pass).length;
  const kinds = Object.entries(words.kinds).map(
    ([kind, name]) => `${results.filter((each) => each.kind === kind).length} ${name}`,
  );
  return (
    <>
      <p role="status">
        {heard.state === 'running' && (
          <>
            <progress
              value={results.length}
              max={Math.max(1, total)}
              aria-label={words.running(results.length, total)}
            />{' '}
            {words.running(results.length, total)}{' '}
            <Button className="tool" onPress={stop}>
              {words.stop}
            </Button>
          </>
        )}
        {heard.state === 'done' && <strong>{words.done(passed, results.length - passed)}</strong>}
        {heard.state === 'stopped' && words.stopped(results.length, total)}
        {heard.state === 'fault' && words.fault(heard.fault ?? '')}
      </p>
      <p className="quiet">
        {words.counts}: {kinds.join(', ')}.
      </p>
    </>
  );
}

/** A choice of one name among many, or all. */
function Pick(props: {
  readonly label: string;
  readonly names: Readonly<Record<string, string>>;
  readonly value: string;
  onPick(value: string): void;
}) {
  return (
    <label>
      {props.label}{' '}
      <select value={props.value} onChange={(event) => props.onPick(event.target.value)}>
        <option value="all">{words.all}</option>
        {Object.entries(props.names).map(([key, name]) => (
          <option key={key} value={key}>
            {name}
          </option>
        ))}
      </select>
    </label>
  );
}

function copy(rows: readonly CheckResult[]): void {
  void navigator.clipboard
    .writeText(asText(rows))
    .then(() => setView({ notice: { kind: 'good', text: words.copied } }));
}

function Checks() {
  const stage = useStore(evidenceStore, (state) => state.stage);
  const [rest, setRest] = useState<Omit<Choice, 'stage'>>({ kind: 'all', onlyFailed: false });
  const heard = useJob<CheckAnswer>(startChecks, ask);
  const results = useMemo(() => heard.answers.map(({ result }) => result), [heard.answers]);
  const rows = useMemo(() => chosen(results, { stage, ...rest }), [results, stage, rest]);
  return (
    <>
      <p>{words.about}</p>
      <Account heard={heard} results={results} stop={heard.stop} />
      <div className="checks-choice">
        <Pick
          label={words.stage}
          names={words.stages}
          value={stage}
          onPick={(value) => evidenceStore.setState({ stage: value })}
        />
        <Pick label={words.kind} names={words.kinds} value={rest.kind} onPick={(kind) => setRest({ ...rest, kind })} />
        <label>
          <input
            type="checkbox"
            checked={rest.onlyFailed}
            onChange={(event) => setRest({ ...rest, onlyFailed: event.target.checked })}
          />{' '}
          {words.onlyFailed}
        </label>
        <Button className="tool" onPress={() => copy(rows)}>
          {words.copy}
        </Button>
      </div>
      <ChecksTable results={rows} />
    </>
  );
}

/** The dialog; the checks run while it is open. */
export function Evidence() {
  const open = useView((state) => state.dialog === 'evidence');
  return (
    <DialogFrame id="evidence" title={words.title} wide>
      {open && <Checks />}
    </DialogFrame>
  );
}
