/** Where the table is pasted, and what was read of it. */

import { Button } from 'react-aria-components';
import { type Issue, issueText, type Result, type RheologyTable } from '../../core/index.ts';
import { getBridge } from '../bridge.ts';
import { IssueText } from '../fields/IssueText.tsx';
import { announce } from '../files.ts';
import { fitText as words } from '../strings/fit.ts';
import { setFit, useFit } from './store.ts';
import { temperatureCount } from './table.ts';

/** Most faulty rows that are listed. */
const most = 12;

async function openFile(): Promise<void> {
  const picked = await getBridge().importText('csv');
  if (!picked.ok) announce('bad', picked.issues.map(issueText).join(' '));
  else if (picked.value) setFit({ text: picked.value.text, from: picked.value.name });
}

function Faults({ issues }: { readonly issues: readonly Issue[] }) {
  if (issues.length === 0) return null;
  const shown = issues.slice(0, most);
  return (
    <div className="fit-faults" role="alert">
      <p>{words.left(new Set(issues.map(({ path }) => path[1])).size)}</p>
      <ul>
        {shown.map((issue) => (
          <li key={issue.path.join('/')}>
            {issue.message} {issue.value !== undefined && `“${issue.value}”`} {issue.remedy}
          </li>
        ))}
      </ul>
      {issues.length > most && <p>{words.more(issues.length - most)}</p>}
    </div>
  );
}

function Account({ table }: { readonly table: Result<RheologyTable> | null }) {
  if (table === null) return null;
  if (!table.ok) return table.issues.map((issue) => <IssueText key={issue.code} issue={issue} />);
  return (
    <>
      <p className="fit-read">
        <b>{words.read(table.value.points.length, temperatureCount(table.value))}</b> {table.value.notes.join(' ')}
      </p>
      <Faults issues={table.value.issues} />
    </>
  );
}

/** The part. */
export function Readings({ table }: { readonly table: Result<RheologyTable> | null }) {
  const draft = useFit((state) => state);
  return (
    <div className="fit-readings">
      <label className="fit-paste">
        <span>{words.paste}</span>
        <textarea
          rows={9}
          spellCheck={false}
          wrap="off"
          value={draft.text}
          placeholder={words.placeholder}
          onChange={({ target }) => setFit({ text: target.value })}
        />
      </label>
      <p className="quiet">
        {words.pasteHelp}{' '}
        <Button className="link" onPress={() => void openFile()}>
          {words.open}
        </Button>
      </p>
      <Account table={table} />
      <label className="fit-line" title={words.oneTemperatureHelp}>
        <span>{words.oneTemperature}</span>
        <input
          type="text"
          className="number"
          inputMode="decimal"
          value={draft.temperature}
          onChange={({ target }) => setFit({ temperature: target.value })}
        />
      </label>
      <label className="fit-line">
        <span>{words.from}</span>
        <input
          type="text"
          maxLength={200}
          value={draft.from}
          placeholder={words.fromPlaceholder}
          onChange={({ target }) => setFit({ from: target.value })}
        />
      </label>
    </div>
  );
}
