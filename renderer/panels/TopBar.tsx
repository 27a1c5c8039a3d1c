/** The window's head: project, revisions, and the commands one reaches for most. */

import { Button } from 'react-aria-components';
import { type Command, commandOf, perform } from '../commands.ts';
import { keysText } from '../keys.ts';
import { dropDrafts } from '../store/drafts.ts';
import { applyEdit, isUnsaved, useProject, useProjectState } from '../store/project.ts';
import { chooseRevision } from '../store/revisions.ts';
import { useView } from '../store/view.ts';
import { text } from '../strings.ts';
import { InventedBadge } from './InventedBadge.tsx';
import { Logo } from './Logo.tsx';

function tip(command: Command, more = ''): string {
  const keys = command.keys ? ` (${keysText(command.keys)})` : '';
  return `${command.label}${more}${keys}`;
}

/** A button for a command; redrawn whenever the project changes, so that it knows whether it can be pressed. */
export function CommandButton(props: {
  readonly id: string;
  readonly sign?: string;
  readonly step?: string | undefined;
}) {
  useProjectState((state) => state);
  const command = commandOf(props.id);
  const title = tip(command, props.step ? `: ${props.step}` : '');
  return (
    <Button
      className={props.sign ? 'tool sign' : 'tool'}
      isDisabled={!command.enabled()}
      aria-label={title}
      onPress={() => perform(props.id)}
    >
      <span title={title}>{props.sign ?? command.label}</span>
    </Button>
  );
}

function ProjectName() {
  const project = useProject();
  const unsaved = useProjectState(isUnsaved);
  const file = useProjectState((state) => state.file.name);
  return (
    <div className="project-name">
      <h1 title={project.note ?? project.name}>{project.name}</h1>
      <span className="quiet file-name">
        {project.invented && <InventedBadge />} {file}
        {unsaved && <span className="unsaved"> • {text.notices.unsaved}</span>}
      </span>
    </div>
  );
}

function RevisionStrip() {
  const project = useProject();
  const choose = (id: string) => {
    dropDrafts(['revisions']);
    applyEdit(chooseRevision(id), { label: `${text.revisions.use}: ${id}` });
  };
  return (
    <nav className="revision-strip" aria-label={text.revisions.title}>
      {project.revisions.map(({ id, name, locked }) => {
        const active = id === project.activeRevision;
        return (
          <Button
            key={id}
            className={active ? 'revision active' : 'revision'}
            aria-pressed={active}
            aria-label={`${id}: ${name}${locked ? `, ${text.revisions.locked}` : ''}`}
            onPress={() => choose(id)}
          >
            <span title={`${id}: ${name}`}>
              <b>{id}</b>
              {active && <span className="revision-name"> {name}</span>}
              {locked && <span className="lock"> {text.revisions.locked}</span>}
            </span>
          </Button>
        );
      })}
      <CommandButton id="branch" />
      <CommandButton id="revisions" />
      <CommandButton id="compare" />
      <CommandButton id="colour" />
      <CommandButton id="doubt" />
    </nav>
  );
}

/** The head. */
export function TopBar() {
  const past = useProjectState((state) => state.history?.past.at(-1)?.label);
  const future = useProjectState((state) => state.history?.future[0]?.label);
  const theme = useView((state) => state.theme);
  return (
    <header className="top-bar">
      <Logo />
      <ProjectName />
      <RevisionStrip />
      <div className="top-tools" role="toolbar" aria-label={text.commands.title}>
        <CommandButton id="undo" sign="↶" step={past} />
        <CommandButton id="redo" sign="↷" step={future} />
        <CommandButton id="open" />
        <CommandButton id="save" />
        <CommandButton id="bench" />
        <CommandButton id="examples" />
        <CommandButton id="theme" sign={theme === 'dark' ? '☀' : '☾'} />
        <CommandButton id="commands" sign="☰" />
      </div>
    </header>
  );
}
