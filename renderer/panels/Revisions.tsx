/** The list of revisions: name, note, lock, delete, branch. */

import { Button } from 'react-aria-components';
import type { Revision } from '../../core/index.ts';
import { perform } from '../commands.ts';
import { TextField } from '../fields/TextField.tsx';
import { dropDrafts } from '../store/drafts.ts';
import { applyEdit, useProject } from '../store/project.ts';
import {
  chooseRevision,
  deleteRevision,
  keptBecause,
  lockRevision,
  noteRevision,
  renameRevision,
} from '../store/revisions.ts';
import { text } from '../strings.ts';
import { DialogFrame } from './DialogFrame.tsx';

const words = text.revisions;

function Acts({ revision }: { readonly revision: Revision }) {
  const { id, locked } = revision;
  const kept = keptBecause(useProject(), id);
  const use = () => {
    dropDrafts(['revisions']);
    applyEdit(chooseRevision(id), { label: `${words.use}: ${id}` });
  };
  const remove = () => {
    dropDrafts(['revisions']);
    applyEdit(deleteRevision(id), { label: `${words.remove} ${id}` });
  };
  return (
    <div className="acts">
      <Button className="tool" onPress={use}>
        {words.use}
      </Button>
      <Button
        className="tool"
        onPress={() => applyEdit(lockRevision(id, !locked), { label: `${locked ? words.unlock : words.lock} ${id}` })}
      >
        {locked ? words.unlock : words.lock}
      </Button>
      <Button className="tool" isDisabled={kept !== null} onPress={remove}>
        {words.remove}
      </Button>
      {kept && <span className="quiet">{words.kept[kept]}</span>}
    </div>
  );
}

function Card({ revision }: { readonly revision: Revision }) {
  const project = useProject();
  const { id, name, note, date, parent, locked } = revision;
  const active = id === project.activeRevision;
  return (
    <li className={active ? 'revision-card active' : 'revision-card'}>
      <p className="revision-line">
        <b>{id}</b>
        {date && <span className="quiet">{date}</span>}
        {parent && <span className="quiet">{`${words.from} ${parent}`}</span>}
        {active && <span className="badge">{words.current}</span>}
        {locked && <span className="badge">{words.locked}</span>}
      </p>
      <TextField
        label={words.rename}
        value={name}
        required
        onCommit={(value) => applyEdit(renameRevision(id, value), { label: `${words.rename} ${id}` })}
      />
      <TextField
        label={words.note}
        value={note ?? ''}
        lines={2}
        maxLength={4000}
        placeholder={words.notePlaceholder}
        onCommit={(value) => applyEdit(noteRevision(id, value), { label: `${words.note} ${id}` })}
      />
      <Acts revision={revision} />
    </li>
  );
}

/** The dialog. */
export function Revisions() {
  const project = useProject();
  return (
    <DialogFrame id="revisions" title={words.title}>
      <ul className="revision-cards">
        {project.revisions.map((revision) => (
          <Card key={revision.id} revision={revision} />
        ))}
      </ul>
      <Button className="tool" onPress={() => perform('branch')}>
        {words.branch}
      </Button>
    </DialogFrame>
  );
}
