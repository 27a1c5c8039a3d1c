/** Opening through the host, with every refusal told in words; leaving a project asks first where that loses changes. */

import {
  type Issue,
  issueText,
  type Project,
  parseProject,
  pathText,
  type Result,
  unknownFields,
} from '../core/index.ts';
import { announce } from './announce.ts';
import { getBridge, type OpenedProject } from './bridge.ts';
import { showFaults, showProjectFaults } from './safekeeping/faults.ts';
import { showHolder } from './safekeeping/holder.ts';
import { unstay } from './safekeeping/notices.ts';
import { saveProject } from './safekeeping/saving.ts';
import { dropDrafts } from './store/drafts.ts';
import { currentProject, isUnsaved, loadProject, projectStore, startProject } from './store/project.ts';
import { flyTo, setView, viewStore } from './store/view.ts';
import { safeText } from './strings/safekeeping.ts';
import { text } from './strings.ts';

export { announce } from './announce.ts';
export { saveProject, saveProjectAs } from './safekeeping/saving.ts';

const refuse = (issues: readonly Issue[]): void =>
  announce('bad', `${text.broken.cannotOpen}. ${issues.map(issueText).join(' ')}`);

/** Takes an opened file in; false where its text is no project, which is then told fault by fault. */
export function takeIn(opened: OpenedProject): boolean {
  const { handle, name, path, version, holder } = opened;
  const project = parseProject(opened.text);
  if (!project.ok) {
    showProjectFaults(name, opened.text, project.issues);
    return false;
  }
  dropDrafts([]);
  loadProject(project.value, { handle, name, path, version });
  for (const subject of ['save', 'file', 'start', 'drop'] as const) unstay(subject);
  showHolder(holder);
  // what was said of a file that could not be opened is over with one that could
  const { dialog } = viewStore.getState();
  setView({ mark: null, hoverZ: null, notice: null, ...(dialog === 'faults' ? { dialog: 'none' } : {}) });
  flyTo('whole');
  return true;
}

/** Says that a project is open, and which of its fields this program does not know: they may be slips of the pen. */
function announceOpened(name: string): void {
  const project = currentProject();
  const strange = project ? unknownFields(project).map(({ path }) => pathText(path)) : [];
  if (strange.length === 0) announce('good', text.notices.opened(name));
  else
    announce('bad', `${text.notices.opened(name)} ${text.notices.unknownFields(strange.slice(0, 3), strange.length)}`);
}

let held: (() => Promise<void>) | null = null;

/** Does what would replace the open project, but asks first where that would lose changes. */
export async function orAsk(act: () => Promise<void>): Promise<void> {
  if (!isUnsaved(projectStore.getState())) return act();
  held = act;
  setView({ dialog: 'discard' });
}

/** Goes on with what was held back, the changes being saved or given up; a save that fails gives nothing up. */
export async function goOn(saveFirst: boolean): Promise<void> {
  const act = held;
  held = null;
  setView({ dialog: 'none' });
  if (saveFirst && (await saveProject()) !== 'saved') return;
  if (act && (!saveFirst || !isUnsaved(projectStore.getState()))) await act();
}

/** Asks for what a new project needs, once the open one may be left. */
export const beginNew = (): Promise<void> => orAsk(async () => setView({ dialog: 'new' }));

/** Goes on with a new project, which no file holds yet. */
export function takeNew(project: Project, sentence: string): void {
  dropDrafts([]);
  startProject(project);
  showHolder(null);
  for (const subject of ['save', 'file', 'start', 'drop'] as const) unstay(subject);
  setView({ mark: null, hoverZ: null, dialog: 'none', part: 'screw' });
  flyTo('whole');
  announce('good', sentence);
}

/** Takes in what a call of the host opens, and says so. Null: the person cancelled. */
async function take(opening: Promise<Result<OpenedProject | null>>): Promise<void> {
  const opened = await opening;
  if (opened.ok && opened.value) setView({ notice: null });
  if (!opened.ok) refuse(opened.issues);
  else if (opened.value && takeIn(opened.value)) announceOpened(opened.value.name);
}

/** Lets the person choose a project. */
export const openProject = (): Promise<void> => orAsk(() => take(getBridge().openProject()));

/** Opens an example that ships with the program. */
export const openExample = (id: string): Promise<void> => orAsk(() => take(getBridge().readExample(id)));

/** Opens a project file that was dragged into the window. */
export const openDroppedProject = (file: File): Promise<void> => orAsk(() => take(getBridge().openDropped(file)));

/** Opens a file of the list of recent ones; false where it cannot be opened any more, `gone` then hears why. */
export const openRecentFile = (handle: string, gone: (issues: readonly Issue[]) => void): Promise<void> =>
  orAsk(async () => {
    const opened = await getBridge().openRecent(handle);
    if (!opened.ok) return gone(opened.issues);
    setView({ dialog: 'none' });
    if (takeIn(opened.value)) announceOpened(opened.value.name);
  });

/** Opens the version that was kept from before the latest save. */
export async function openPrevious(): Promise<void> {
  const { handle } = projectStore.getState().file;
  if (handle !== null) await orAsk(() => take(getBridge().openPrevious(handle)));
}

/** Reads the open file again. */
export async function reloadFile(): Promise<void> {
  const { handle } = projectStore.getState().file;
  if (handle === null) return;
  await orAsk(async () => {
    const opened = await getBridge().openRecent(handle);
    if (!opened.ok) refuse(opened.issues);
    else if (takeIn(opened.value)) announce('good', safeText.file.again(opened.value.name));
  });
}

/** Opens the project the window starts with. */
export async function openStart(): Promise<void> {
  const opened = await getBridge().readStartProject();
  if (opened.ok) takeIn(opened.value);
  else showFaults(opened.issues[0]?.path.join('') ?? '', opened.issues);
}
