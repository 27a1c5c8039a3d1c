/** Opening and saving through the host, with every refusal told in words. */

import { type Issue, issueText, type Project, parseProject, serializeProject } from '../core/index.ts';
import { getBridge, type OpenedProject } from './bridge.ts';
import { dropDrafts } from './store/drafts.ts';
import { currentProject, isUnsaved, loadProject, markSaved, projectStore, startProject } from './store/project.ts';
import { flyTo, setView } from './store/view.ts';
import { text } from './strings.ts';

/** Shows a sentence about what just happened. */
export const announce = (kind: 'good' | 'bad', sentence: string): void => setView({ notice: { kind, text: sentence } });

const refuse = (issues: readonly Issue[]): void => {
  const more = issues.length > 3 ? ` (+${issues.length - 3})` : '';
  announce('bad', `${text.broken.cannotOpen}. ${issues.slice(0, 3).map(issueText).join(' ')}${more}`);
};

/** Takes an opened file in; false where its text is no project. */
export function takeIn(opened: OpenedProject): boolean {
  const project = parseProject(opened.text);
  if (!project.ok) {
    refuse(project.issues);
    return false;
  }
  dropDrafts([]);
  const { handle, name, path, version } = opened;
  loadProject(project.value, { handle, name, path, version });
  setView({ mark: null, hoverZ: null, notice: null });
  flyTo('whole');
  return true;
}

let held: (() => Promise<void>) | null = null;

/** Does what would replace the open project, but asks first where that would lose changes. */
async function orAsk(act: () => Promise<void>): Promise<void> {
  if (!isUnsaved(projectStore.getState())) return act();
  held = act;
  setView({ dialog: 'discard' });
}

/** Goes on with what was held back, the changes being saved or given up. */
export async function goOn(saveFirst: boolean): Promise<void> {
  const act = held;
  held = null;
  setView({ dialog: 'none' });
  if (saveFirst) await saveProject();
  if (act && (!saveFirst || !isUnsaved(projectStore.getState()))) await act();
}

/** Lets the person choose a project. */
export const openProject = (): Promise<void> => orAsk(chooseProject);

/** Asks for what a new project needs, once the open one may be left. */
export const beginNew = (): Promise<void> => orAsk(async () => setView({ dialog: 'new' }));

/** Goes on with a new project, which no file holds yet. */
export function takeNew(project: Project, sentence: string): void {
  dropDrafts([]);
  startProject(project);
  setView({ mark: null, hoverZ: null, dialog: 'none', part: 'screw' });
  flyTo('whole');
  announce('good', sentence);
}

/** Opens an example that ships with the program. */
export const openExample = (id: string): Promise<void> => orAsk(() => readExample(id));

async function chooseProject(): Promise<void> {
  const opened = await getBridge().openProject();
  if (!opened.ok) refuse(opened.issues);
  else if (opened.value && takeIn(opened.value)) announce('good', text.notices.opened(opened.value.name));
}

async function readExample(id: string): Promise<void> {
  const opened = await getBridge().readExample(id);
  if (!opened.ok) refuse(opened.issues);
  else if (takeIn(opened.value)) announce('good', text.notices.opened(opened.value.name));
}

/** Opens the project the window starts with. */
export async function openStart(): Promise<void> {
  const opened = await getBridge().readStartProject();
  if (opened.ok) takeIn(opened.value);
  else refuse(opened.issues);
}

const fileNameFor = (name: string): string =>
  `${
    name
      .replace(/[^\p{L}\p{N}._-]+/gu, '-')
      .replace(/^[-.]+|[-.]+$/g, '')
      .slice(0, 80) || 'project'
  }.json`;

async function save(asNew: boolean): Promise<void> {
  const project = currentProject();
  if (!project) return;
  const { file } = projectStore.getState();
  const name = file.name || fileNameFor(project.name);
  const written = serializeProject(project);
  const bridge = getBridge();
  const saved =
    asNew || file.handle === null
      ? await bridge.saveProjectAs(written, name)
      : await bridge.saveProject({
          handle: file.handle,
          name,
          text: written,
          version: file.version ?? null,
          evenIfChanged: false,
        });
  if (!saved.ok) {
    announce('bad', saved.issues.map(issueText).join(' '));
  } else if (saved.value) {
    const { handle, name: savedName, path, version } = saved.value;
    markSaved(project, { handle, name: savedName, path, version });
    announce('good', text.notices.saved(saved.value.name));
  }
}

/** Writes the project back to its file, or asks for one. */
export const saveProject = (): Promise<void> => save(false);

/** Writes the project to a file that the person chooses. */
export const saveProjectAs = (): Promise<void> => save(true);
