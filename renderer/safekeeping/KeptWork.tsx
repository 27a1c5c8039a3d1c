/** One piece of kept work: whose it is, what differs from its file, and what can be done with it. */

import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { RecoveredWork, Recovery } from '../bridge.ts';
import { IssueText } from '../fields/IssueText.tsx';
import { safeText } from '../strings/safekeeping.ts';
import { DifferenceTable } from './DifferenceTable.tsx';
import { placeOf, valueName } from './fieldNames.ts';
import { goOnWith, type ReadWork, readWork, saveCopy, throwAway, useRecovery } from './recovery.ts';
import { pathOfKey } from './restoreDrafts.ts';
import { whenText } from './when.ts';

const words = safeText.recovery;

function Drafts({ work, project }: { readonly work: RecoveredWork; readonly project: unknown }) {
  const typed = Object.entries(work.drafts);
  if (typed.length === 0) return null;
  return (
    <div>
      <h4>{words.drafts}</h4>
      <ul>
        {typed.map(([key, text]) => (
          <li key={key}>
            {placeOf(pathOfKey(key), project)} {valueName(pathOfKey(key))}: <b>{text}</b>
          </li>
        ))}
      </ul>
    </div>
  );
}

/** Names of the last edits, the latest first, as far as they help to remember. */
function Edits({ steps }: { readonly steps: readonly string[] }) {
  const named = steps.filter((step) => step !== '').slice(-12);
  if (named.length === 0) return null;
  return (
    <p>
      <b>{words.edits}:</b> {named.reverse().join(' · ')}
    </p>
  );
}

function Difference({ read }: { readonly read: ReadWork }) {
  const { work, project, onFile, issues } = read;
  const heads = [safeText.difference.onFile, safeText.difference.recovered] as const;
  if (!project) {
    return (
      <>
        <p className="issue">{words.unreadable}</p>
        {issues.slice(0, 5).map((issue) => (
          <IssueText key={`${issue.code} ${issue.path.join('.')}`} issue={issue} />
        ))}
      </>
    );
  }
  return (
    <>
      {work.fileChanged && <p className="banner-line">▲ {words.changed}</p>}
      {work.path !== null && work.fileText === null && <p className="banner-line">▲ {words.gone}</p>}
      {work.fileText !== null && onFile === null && <p className="issue">{words.faulty}</p>}
      {onFile && <DifferenceTable before={onFile} after={project} heads={heads} same={words.same} />}
      <Edits steps={work.steps} />
      <Drafts {...{ work, project }} />
    </>
  );
}

function Ways({ read }: { readonly read: ReadWork }) {
  const { work, project } = read;
  const hasFile = work.handle !== null;
  return (
    <>
      {project && !work.fileChanged && (
        <Button className="tool strong" onPress={() => void goOnWith(read, false)}>
          {words.goOn}
        </Button>
      )}
      {project && hasFile && (
        <Button className="tool" onPress={() => void goOnWith(read, true)}>
          {words.goOnCopy}
        </Button>
      )}
      {project && work.fileChanged && hasFile && (
        <Button className="tool" onPress={() => void goOnWith(read, false)}>
          {words.overwrite}
        </Button>
      )}
      <Button className="tool" onPress={() => void saveCopy(read)}>
        {words.copy}
      </Button>
    </>
  );
}

/** Throwing away asks once, in place. */
function Drop({ found }: { readonly found: Recovery }) {
  const [asked, setAsked] = useState(false);
  if (!asked) {
    return (
      <Button className="tool" onPress={() => setAsked(true)}>
        {words.drop}
      </Button>
    );
  }
  return (
    <span className="ask" role="alertdialog" aria-label={words.askDrop(found.name)}>
      {words.askDrop(found.name)}
      <Button className="tool" autoFocus onPress={() => setAsked(false)}>
        {words.keepIt}
      </Button>
      <Button className="tool danger" onPress={() => void throwAway(found)}>
        {words.reallyDrop}
      </Button>
    </span>
  );
}

/** The piece. */
export function KeptWork({ found }: { readonly found: Recovery }) {
  const read = useRecovery((state) => state.read[found.id]);
  const [reading, setReading] = useState(false);
  const show = () => {
    setReading(true);
    void readWork(found.id).finally(() => setReading(false));
  };
  return (
    <article className="kept-work" aria-label={found.name}>
      <h3>{found.name}</h3>
      <p className="quiet">{words.kept(whenText(found.at), found.edits)}</p>
      <p className="quiet kept-path">{found.path ?? words.noFile}</p>
      {read && <Difference read={read} />}
      <div className="acts">
        {read ? (
          <Ways read={read} />
        ) : (
          <Button className="tool strong" onPress={show}>
            {reading ? words.reading : words.show}
          </Button>
        )}
        <Drop found={found} />
      </div>
    </article>
  );
}
