/** Every command as one object, shared by the host's menu, keys, buttons and the command list. */

import { openBench } from './bench/store.ts';
import { editCommands } from './editCommands.ts';
import { announce, openExample, openProject, saveProject, saveProjectAs } from './files.ts';
import { openFit } from './fit/store.ts';
import { openHandover } from './handover/store.ts';
import { exportMaterial, importMaterial, runMaterialId } from './panels/granulate/materialFiles.ts';
import { sceneCommands } from './scene/sceneCommands.ts';
import { turnScrew } from './scene/sceneStore.ts';
import { dropStrayDrafts } from './store/drafts.ts';
import { toggleMelt } from './store/melt.ts';
import { activeRevision, applyEdit, currentProject, projectStore, redo, undo } from './store/project.ts';
import { branchRevision, freeId } from './store/revisions.ts';
import { flyTo, type Place, setView, toggleTheme, viewStore } from './store/view.ts';
import { benchText } from './strings/bench.ts';
import { colourText } from './strings/colour.ts';
import { doubtText } from './strings/doubt.ts';
import { drawingText } from './strings/drawing.ts';
import { fitText } from './strings/fit.ts';
import { handoverText } from './strings/handover.ts';
import { searchText } from './strings/search.ts';
import { tourText } from './strings/tour.ts';
import { text } from './strings.ts';
import { startTour } from './tour/store.ts';

/** One thing that can be done. `keys` as written: Mod is Ctrl, or Cmd on a Mac. */
export interface Command {
  readonly id: string;
  readonly label: string;
  readonly keys?: string;
  /** whether it can be done now */
  enabled(): boolean;
  perform(): void | Promise<void>;
}

const always = () => true;
const isOpen = () => projectStore.getState().history !== null;

const look = (to: Place, keys: string): Command => ({
  id: `look-${to}`,
  label: text.commands.look(text.see.places[to]),
  keys,
  enabled: isOpen,
  perform: () => flyTo(to),
});

/** Copies a revision, the shown one unless another is named, and shows the copy. */
export function branchFrom(id?: string): void {
  const project = currentProject();
  if (!project) return;
  const from = project.revisions.find((revision) => revision.id === id) ?? activeRevision(project);
  const date = new Date().toISOString().slice(0, 10);
  const name = text.revisions.copyOf(from.name).slice(0, 120);
  applyEdit(branchRevision(from.id, name, date), { label: `${text.revisions.branch} ${freeId(project)}` });
}

function stepped(step: () => void): void {
  step();
  dropStrayDrafts(currentProject());
}

/** All commands, in the order of the list. */
export const commands: readonly Command[] = [
  {
    id: 'undo',
    label: text.commands.undo,
    keys: 'Mod+Z',
    enabled: () => (projectStore.getState().history?.past.length ?? 0) > 0,
    perform: () => stepped(undo),
  },
  {
    id: 'redo',
    label: text.commands.redo,
    keys: 'Mod+Shift+Z',
    enabled: () => (projectStore.getState().history?.future.length ?? 0) > 0,
    perform: () => stepped(redo),
  },
  ...editCommands,
  { id: 'open', label: text.commands.open, keys: 'Mod+O', enabled: always, perform: openProject },
  { id: 'save', label: text.commands.save, keys: 'Mod+S', enabled: isOpen, perform: saveProject },
  { id: 'save-as', label: text.commands.saveAs, keys: 'Mod+Shift+S', enabled: isOpen, perform: saveProjectAs },
  { id: 'handover', label: handoverText.command, keys: 'Mod+E', enabled: isOpen, perform: () => openHandover() },
  { id: 'examples', label: text.commands.examples, enabled: always, perform: () => setView({ dialog: 'examples' }) },
  { id: 'branch', label: text.revisions.branch, keys: 'Mod+B', enabled: isOpen, perform: () => branchFrom() },
  { id: 'revisions', label: text.revisions.manage, enabled: isOpen, perform: () => setView({ dialog: 'revisions' }) },
  {
    id: 'compare',
    label: text.revisions.compare,
    keys: 'Mod+D',
    enabled: () => (currentProject()?.revisions.length ?? 0) > 1,
    perform: () => setView({ dialog: 'compare' }),
  },
  { id: 'bench', label: benchText.command, keys: 'Mod+L', enabled: isOpen, perform: () => openBench() },
  {
    id: 'colour',
    label: colourText.command,
    keys: 'Alt+6',
    enabled: isOpen,
    perform: () => setView({ dialog: 'colour' }),
  },
  {
    id: 'doubt',
    label: doubtText.command,
    keys: 'Alt+7',
    enabled: isOpen,
    perform: () => setView({ dialog: 'doubt' }),
  },
  {
    id: 'search',
    label: searchText.command,
    keys: 'Alt+8',
    enabled: isOpen,
    perform: () => setView({ dialog: 'search' }),
  },
  { id: 'import-material', label: text.describe.granulate.importCommand, enabled: isOpen, perform: importMaterial },
  {
    id: 'export-material',
    label: text.describe.granulate.exportCommand,
    enabled: () => runMaterialId() !== null,
    perform: () => exportMaterial(runMaterialId() ?? ''),
  },
  {
    id: 'fit-viscosity',
    label: fitText.command,
    enabled: () => runMaterialId() !== null,
    perform: () => openFit(runMaterialId() ?? ''),
  },
  look('whole', 'Alt+1'),
  look('feed', 'Alt+2'),
  look('screw', 'Alt+3'),
  look('outlet', 'Alt+4'),
  {
    id: 'turn',
    label: text.commands.turn,
    enabled: isOpen,
    perform: turnScrew,
  },
  {
    id: 'slice',
    label: text.commands.slice,
    enabled: isOpen,
    perform: () => setView({ section: viewStore.getState().section === null ? 0 : null }),
  },
  {
    id: 'drawing',
    label: drawingText.command,
    keys: 'Alt+8',
    enabled: isOpen,
    perform: () => setView({ seeing: viewStore.getState().seeing === 'drawing' ? 'solid' : 'drawing' }),
  },
  { id: 'melt-age', label: text.melt.command, keys: 'Alt+5', enabled: isOpen, perform: toggleMelt },
  ...sceneCommands,
  { id: 'theme', label: text.commands.theme, enabled: always, perform: toggleTheme },
  {
    id: 'tour',
    label: tourText.command,
    enabled: isOpen,
    perform: () => {
      setView({ dialog: 'none' });
      startTour();
    },
  },
  {
    id: 'commands',
    label: text.commands.list,
    keys: 'Mod+K',
    enabled: always,
    perform: () => setView({ dialog: 'commands' }),
  },
];

/** The command of this id. */
export function commandOf(id: string): Command {
  const command = commands.find((candidate) => candidate.id === id);
  if (!command) throw new Error(`no command is called ${id}`);
  return command;
}

/** Performs a command if it can be done now; a failure becomes a notice. */
export function perform(id: string): void {
  const command = commands.find((candidate) => candidate.id === id);
  if (!command?.enabled()) return;
  Promise.resolve()
    .then(() => command.perform())
    .catch((reason: unknown) => announce('bad', reason instanceof Error ? reason.message : String(reason)));
}

export { openExample };
