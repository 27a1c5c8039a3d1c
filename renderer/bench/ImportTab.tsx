/** Bringing a table of trials in: what was understood is shown, and can be put right, before anything is taken over. */

import { useMemo, useState } from 'react';
import { Button } from 'react-aria-components';
import {
  type BenchCsvChoices,
  type BenchImport,
  benchContext,
  issueText,
  type Result,
  readBenchCsv,
} from '../../core/index.ts';
import { getBridge } from '../bridge.ts';
import { IssueText } from '../fields/IssueText.tsx';
import { announce } from '../files.ts';
import { useProject } from '../store/project.ts';
import { setView } from '../store/view.ts';
import { benchText } from '../strings/bench.ts';
import { today } from '../today.ts';
import { ImportAccount } from './ImportAccount.tsx';
import { ImportColumns } from './ImportColumns.tsx';
import { ImportPreview } from './ImportPreview.tsx';
import { setBench, useBench } from './store.ts';
import { importTrials } from './trials.ts';

const words = benchText.import;

/** Longest text that is read while the window waits: some 6000 trials, more than a bench log holds; a third of a second. */
const longestTable = 1_000_000;

/** Shows a table; what was said of a file before it is over. */
function fresh(name: string | null, text: string): void {
  setView({ notice: null });
  setBench({ table: { name, text, choices: {} } });
}

async function choose(): Promise<void> {
  const picked = await getBridge().importText('csv');
  if (!picked.ok) announce('bad', picked.issues.map(issueText).join(' '));
  else if (picked.value) fresh(picked.value.name, picked.value.text);
}

function Start() {
  const [typed, setTyped] = useState('');
  return (
    <div className="bench-empty wide">
      <p>{words.start}</p>
      <Button className="tool strong" onPress={() => void choose()}>
        {words.choose}
      </Button>
      <label className="paste">
        {words.paste}
        <textarea
          rows={8}
          spellCheck={false}
          value={typed}
          data-testid="paste"
          placeholder={'date;rpm;T1;T2;nozzle;time (s);mass (g)\n2026-02-12;10;175;185;188;120;8,1'}
          onChange={({ target }) => {
            setTyped(target.value);
            if (target.value.includes('\n')) fresh(null, target.value);
          }}
        />
      </label>
    </div>
  );
}

function Pick<T extends string>(props: {
  readonly label: string;
  readonly options: Readonly<Record<T, string>>;
  readonly value: string;
  readonly given: boolean;
  pick(value: T): void;
}) {
  const { label, options, value, given, pick } = props;
  return (
    <label className="pick">
      {label}
      <select value={value} onChange={({ target }) => pick(target.value as T)}>
        {(Object.entries(options) as [T, string][]).map(([key, name]) => (
          <option key={key} value={key}>
            {name}
          </option>
        ))}
      </select>
      <span className="quiet">{given ? words.chosen : words.found}</span>
    </label>
  );
}

function Reading({ read, choices }: { readonly read: BenchImport; readonly choices: BenchCsvChoices }) {
  const table = useBench((state) => state.table);
  const change = (next: BenchCsvChoices) =>
    table && setBench({ table: { ...table, choices: { ...choices, ...next } } });
  return (
    <div className="bench-tools">
      <Pick
        label={words.delimiter}
        options={words.delimiters}
        value={read.delimiter}
        given={choices.delimiter !== undefined}
        // other separators make other columns, so what was said of them no longer holds
        pick={(delimiter) => table && setBench({ table: { ...table, choices: { delimiter } } })}
      />
      <Pick
        label={words.decimal}
        options={words.decimals}
        value={read.decimal}
        given={choices.decimal !== undefined}
        pick={(decimal) => change({ decimal })}
      />
      {read.dateOrder !== null && (
        <Pick
          label={words.dateOrder}
          options={words.dateOrders}
          value={read.dateOrder}
          given={choices.dateOrder !== undefined}
          pick={(dateOrder) => change({ dateOrder })}
        />
      )}
    </div>
  );
}

function TakeOver({ read }: { readonly read: BenchImport }) {
  const count = read.trials.length;
  const add = () => {
    importTrials(read.trials.map(({ trial }) => trial));
    announce('good', words.done(count));
    setBench({ table: null, tab: 'trials' });
  };
  return (
    <div className="bench-tools at-foot">
      <Button className="tool strong" isDisabled={count === 0} onPress={add}>
        {words.add(count)}
      </Button>
      {count === 0 && <span className="issue">{words.nothing}</span>}
      {read.faultyLines > 0 && <span className="bench-old">▲ {words.stayOut(read.faultyLines)}</span>}
    </div>
  );
}

function Understood({ result, choices }: { readonly result: Result<BenchImport>; readonly choices: BenchCsvChoices }) {
  if (!result.ok) return result.issues.map((issue) => <IssueText key={issue.code} issue={issue} />);
  const read = result.value;
  return (
    <>
      <Reading {...{ read, choices }} />
      <ImportColumns {...{ read, choices }} />
      <ImportAccount read={read} />
      <ImportPreview read={read} />
      <TakeOver read={read} />
    </>
  );
}

/** The part of the bench log. */
export function ImportTab() {
  const project = useProject();
  const table = useBench((state) => state.table);
  const result = useMemo(
    () =>
      table === null || table.text.length > longestTable
        ? null
        : readBenchCsv(table.text, benchContext(project, project.activeRevision, today()), table.choices),
    [table, project],
  );
  if (table === null) return <Start />;
  return (
    <>
      <div className="bench-tools">
        <b>{table.name === null ? words.pasted : words.from(table.name)}</b>
        <Button className="tool" onPress={() => setBench({ table: null })}>
          {words.clear}
        </Button>
      </div>
      {table.name === null && (
        <textarea
          rows={5}
          spellCheck={false}
          aria-label={words.paste}
          value={table.text}
          onChange={({ target }) => setBench({ table: { ...table, text: target.value } })}
        />
      )}
      {result ? (
        <Understood result={result} choices={table.choices} />
      ) : (
        <p className="issue">{words.tooLong(`${longestTable / 1e6} million`, (table.text.length / 1e6).toFixed(1))}</p>
      )}
    </>
  );
}
