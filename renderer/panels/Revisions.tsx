/** The list of revisions and what came from what: name, date, note, lock, delete, branch. */

import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { Project, Revision } from '../../core/index.ts';
import { branchFrom } from '../commands.ts';
import { describedRows } from '../compare/describedRows.ts';
import { openRevision } from '../compare/RevisionStrip.tsx';
import { openCompare } from '../compare/store.ts';
import { TextField } from '../fields/TextField.tsx';
import { dropDrafts } from '../store/drafts.ts';
import { applyEdit, useProject, useProjectState } from '../store/project.ts';
import {
  type Descent,
  dateRevision,
  deleteRevision,
  descentOf,
  isDate,
  keptBecause,
  lockRevision,
  noteRevision,
  renameRevision,
} from '../store/revisions.ts';
import { text } from '../strings.ts';
import { DialogFrame } from './DialogFrame.tsx';
import { CommandButton } from './TopBar.tsx';

const words = text.revisions;

function Acts({ revision, parent }: { readonly revision: Revision; readonly parent: string | null }) {
  const { id, locked } = revision;
  const project = useProject();
  const kept = keptBecause(project, id);
  const remove = () => {
    dropDrafts(['revisions']);
    applyEdit(deleteRevision(id), { label: `${words.remove} ${id}` });
  };
  const toggle = () => applyEdit(lockRevision(id, !locked), { label: `${locked ? words.unlock : words.lock} ${id}` });
  return (
    <div className="acts">
      <Button className="tool" isDisabled={id === project.activeRevision} onPress={() => openRevision(id)}>
        {words.use}
      </Button>
      <Button className="tool" onPress={() => branchFrom(id)}>
        {words.branchFrom(id)}
      </Button>
      {parent !== null && (
        <Button className="tool" onPress={() => openCompare([parent, id])}>
          {words.against(parent)}
        </Button>
      )}
      <Button className="tool" onPress={toggle}>
        {locked ? words.unlock : words.lock}
      </Button>
      <Button className="tool" isDisabled={kept !== null} onPress={remove}>
        {words.remove}
      </Button>
      {kept && <span className="quiet">{words.kept[kept]}</span>}
    </div>
  );
}

/** The day of a revision; what is no day is refused in words, and the earlier one stays. */
function DateField({ id, date }: { readonly id: string; readonly date: string }) {
  const [refused, setRefused] = useState<string | null>(null);
  const take = (typed: string) => {
    const day = typed.trim();
    const fine = day === '' || isDate(day);
    setRefused(fine ? null : typed);
    if (fine && day !== date) applyEdit(dateRevision(id, day), { label: `${words.date} ${id}` });
  };
  return (
    <div className="revision-date">
      <TextField label={words.date} value={date} maxLength={10} placeholder={words.datePlaceholder} onCommit={take} />
      {refused !== null && (
        <p className="field-refusal" role="alert">
          {words.badDate(refused)}
        </p>
      )}
    </div>
  );
}

/** Where a revision came from, by how much it differs from that, and what it led to. */
function Lineage({ project, descent }: { readonly project: Project; readonly descent: Descent }) {
  const { parent, children, id } = descent;
  const find = (wanted: string | null) => project.revisions.find((revision) => revision.id === wanted);
  const [own, source] = [find(id), find(parent)];
  const count = own && source ? describedRows([source, own]).filter(({ differs }) => differs).length : null;
  return (
    <span className="quiet lineage">
      {parent === null ? words.first : `${words.from} ${parent}`}
      {parent !== null && count !== null && `; ${words.changes(count, parent)}`}
      {children.length > 0 && `; ${words.branches(children.join(', '))}`}
    </span>
  );
}

function Card({ descent }: { readonly descent: Descent }) {
  const project = useProject();
  const revision = project.revisions.find(({ id }) => id === descent.id);
  if (!revision) return null;
  const { id, name, note, date, locked } = revision;
  const active = id === project.activeRevision;
  return (
    <li
      className={active ? 'revision-card active' : 'revision-card'}
      data-depth={Math.min(descent.depth, 6)}
      aria-label={`${id}: ${name}`}
    >
      <p className="revision-line">
        <b>{id}</b>
        <Lineage {...{ project, descent }} />
        {active && <span className="badge">{words.current}</span>}
        {locked && <span className="badge">{words.locked}</span>}
      </p>
      <div className="revision-names">
        <TextField
          label={words.rename}
          value={name}
          required
          onCommit={(value) => applyEdit(renameRevision(id, value), { label: `${words.rename} ${id}` })}
        />
        <DateField id={id} date={date ?? ''} />
      </div>
      <TextField
        label={words.note}
        value={note ?? ''}
        lines={2}
        maxLength={4000}
        placeholder={words.notePlaceholder}
        onCommit={(value) => applyEdit(noteRevision(id, value), { label: `${words.note} ${id}` })}
      />
      <Acts revision={revision} parent={descent.parent} />
    </li>
  );
}

function Undoing() {
  const past = useProjectState((state) => state.history?.past.at(-1)?.label);
  const future = useProjectState((state) => state.history?.future[0]?.label);
  return (
    <div className="acts">
      <CommandButton id="undo" sign="↶" step={past} />
      <CommandButton id="redo" sign="↷" step={future} />
    </div>
  );
}

/** The dialog. */
export function Revisions() {
  const { revisions } = useProject();
  return (
    <DialogFrame id="revisions" title={words.title}>
      <div className="revisions-head">
        <p className="quiet">{words.help}</p>
        <Undoing />
      </div>
      <ul className="revision-cards">
        {descentOf(revisions).map((descent) => (
          <Card key={descent.id} descent={descent} />
        ))}
      </ul>
    </DialogFrame>
  );
}
