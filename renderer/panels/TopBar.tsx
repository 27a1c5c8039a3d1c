/** The window's head: project, revisions, and the commands one reaches for most. */

import { Button } from 'react-aria-components';
import { getBridge } from '../bridge.ts';
import { type Command, commandOf, perform } from '../commands.ts';
import { RevisionStrip } from '../compare/RevisionStrip.tsx';
import { keysText } from '../keys.ts';
import { isUnsaved, useProject, useProjectState } from '../store/project.ts';
import { type Theme, useView } from '../store/view.ts';
import { editText } from '../strings/editing.ts';
import { text } from '../strings.ts';
import { InventedBadge } from './InventedBadge.tsx';
import { Logo } from './Logo.tsx';
import { Menus } from './Menus.tsx';

function tip(command: Command, more = ''): string {
  const keys = command.keys ? ` (${keysText(command.keys)})` : '';
  return `${command.label}${more}${keys}`;
}

/** A button for a command; asks at each change of the project whether it can be pressed. */
export function CommandButton(props: {
  readonly id: string;
  readonly sign?: string;
  readonly step?: string | undefined;
}) {
  const command = commandOf(props.id);
  const enabled = useProjectState(() => command.enabled());
  const title = tip(command, props.step ? `: ${props.step}` : '');
  return (
    <Button
      className={props.sign ? 'tool sign' : 'tool'}
      isDisabled={!enabled}
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

/** Second row: which revision is worked on, and what there is to decide on it. */
function Deciding() {
  return (
    <div className="deciding">
      <nav className="revision-nav" aria-label={text.revisions.title}>
        <RevisionStrip />
        <CommandButton id="branch" />
        <CommandButton id="revisions" />
      </nav>
      <div className="studies" role="toolbar" aria-label={text.commands.groups.study}>
        <CommandButton id="compare" />
        <CommandButton id="search" />
        <CommandButton id="colour" />
        <CommandButton id="doubt" />
        <CommandButton id="bench" />
        <CommandButton id="handover" />
      </div>
    </div>
  );
}

/** The theme that is shown: sun, moon, half-filled disc. */
const themeSigns: Readonly<Record<Theme, string>> = { light: '☀', dark: '☾', contrast: '◐' };

/** Back and forth, each with the name of the step. */
function HistoryButtons() {
  const past = useProjectState((state) => state.history?.past.at(-1)?.label);
  const future = useProjectState((state) => state.history?.future[0]?.label);
  return (
    <>
      <CommandButton id="undo" sign="↶" step={past} />
      <CommandButton id="redo" sign="↷" step={future} />
    </>
  );
}

/** The head. */
export function TopBar() {
  const theme = useView((state) => state.theme);
  const units = useView((state) => state.units);
  return (
    <header className="head">
      <div className="top-bar">
        <Logo />
        {getBridge().host !== 'electron' && <Menus />}
        <ProjectName />
        <div className="top-tools" role="toolbar" aria-label={text.commands.title}>
          <HistoryButtons />
          <CommandButton id="open" />
          <CommandButton id="save" />
          <CommandButton id="units" sign={editText.units[units]} step={editText.units[units]} />
          <CommandButton id="theme" sign={themeSigns[theme]} />
          <CommandButton id="commands" sign="☰" />
        </div>
      </div>
      <Deciding />
    </header>
  );
}
