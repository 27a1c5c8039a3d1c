/** The open file was changed by somebody else while there is work of one's own: both sides, and the ways out. */

import { Button } from 'react-aria-components';
import { IssueText } from '../fields/IssueText.tsx';
import { DialogFrame } from '../panels/DialogFrame.tsx';
import { useProjectState } from '../store/project.ts';
import { safeText } from '../strings/safekeeping.ts';
import { type Conflict, copyMine, keepMine, takeTheirs, useConflict } from './conflict.ts';
import { DifferenceTable } from './DifferenceTable.tsx';

const words = safeText.file;

function Ways({ conflict }: { readonly conflict: Conflict }) {
  return (
    <dl className="ways">
      <dt>
        <Button className="tool" onPress={() => void keepMine(conflict)}>
          {conflict.fromSave ? words.keepAndSave : words.keepMine}
        </Button>
      </dt>
      <dd>{words.keepMineHelp}</dd>
      {conflict.theirs && (
        <>
          <dt>
            <Button className="tool" onPress={() => takeTheirs(conflict)}>
              {words.takeTheirs}
            </Button>
          </dt>
          <dd>{words.takeTheirsHelp}</dd>
        </>
      )}
      <dt>
        <Button className="tool strong" onPress={() => void copyMine()}>
          {words.copyMine}
        </Button>
      </dt>
      <dd>{words.copyMineHelp}</dd>
    </dl>
  );
}

function Sides({ conflict }: { readonly conflict: Conflict }) {
  const mine = useProjectState((state) => state.history?.present);
  const { theirs, issues } = conflict;
  if (theirs) {
    const heads = [safeText.difference.onFile, safeText.difference.here] as const;
    return <DifferenceTable before={theirs} after={mine} heads={heads} />;
  }
  return (
    <>
      <p className="issue">{words.unreadable}</p>
      {issues.slice(0, 8).map((issue) => (
        <IssueText key={`${issue.code} ${issue.path.join('.')}`} issue={issue} />
      ))}
    </>
  );
}

/** The dialog; closing it decides nothing, and the notice on the file stays. */
export function ConflictDialog() {
  const conflict = useConflict();
  return (
    <DialogFrame id="conflict" title={words.changedTitle} wide>
      {conflict && (
        <>
          <p>{words.changedHelp(conflict.file.path ?? conflict.file.name)}</p>
          <Sides conflict={conflict} />
          <Ways conflict={conflict} />
        </>
      )}
    </DialogFrame>
  );
}
