/** Saving: the project to its file, or to a chosen one; whatever goes wrong stays told until it is put right. */

import { type Issue, issueText, serializeProject } from '../../core/index.ts';
import { announce } from '../announce.ts';
import { getBridge, type SavedFile } from '../bridge.ts';
import { currentProject, markSaved, projectStore } from '../store/project.ts';
import { safeText } from '../strings/safekeeping.ts';
import { text } from '../strings.ts';
import { openConflict } from './conflict.ts';
import { showHolder } from './holder.ts';
import { stay, unstay } from './notices.ts';

/** What became of a save. */
export type SaveOutcome = 'saved' | 'cancelled' | 'failed';

const words = safeText.saving;

let underWay = 0;

/** Whether a save is under way: what the file looks like then says nothing. */
export const isSaving = (): boolean => underWay > 0;

/** A file name from a project's name. */
export const fileNameFor = (name: string): string =>
  `${
    name
      .replace(/[^\p{L}\p{N}._-]+/gu, '-')
      .replace(/^[-.]+|[-.]+$/g, '')
      .slice(0, 80) || 'project'
  }.augerwright`;

/** Who holds the file, asked anew where a save was refused for it. */
async function tellHolder(handle: string | null): Promise<void> {
  if (handle === null) return;
  const { version = null } = projectStore.getState().file;
  const looked = await getBridge().lookAtFile(handle, version);
  if (looked.ok && looked.value.holder) showHolder(looked.value.holder);
}

async function tellFailure(issues: readonly Issue[], asNew: boolean, name: string): Promise<void> {
  const { handle } = projectStore.getState().file;
  const codes = issues.map(({ code }) => code);
  if (codes.includes('file-held')) await tellHolder(handle);
  if (codes.includes('file-changed-outside') && handle !== null) return openConflict(handle, true);
  stay({
    subject: 'save',
    kind: 'bad',
    text: words.failed(name),
    remedy: issues.map(issueText).join(' '),
    acts: [
      { label: safeText.tryAgain, perform: () => save(asNew) },
      { label: safeText.saveAs, perform: saveProjectAs },
    ],
  });
}

function tellSaved(saved: SavedFile): void {
  for (const subject of ['save', 'file', 'held'] as const) unstay(subject);
  const handedOut = saved.handle === null && getBridge().host === 'loopback';
  announce('good', handedOut ? words.handedOut(saved.name) : text.notices.saved(saved.name));
}

async function save(asNew: boolean): Promise<SaveOutcome> {
  const project = currentProject();
  if (!project) return 'cancelled';
  const { file } = projectStore.getState();
  const name = file.name || fileNameFor(project.name);
  const written = serializeProject(project);
  const bridge = getBridge();
  const saving = { handle: file.handle, name, text: written, version: file.version ?? null, evenIfChanged: false };
  underWay += 1;
  try {
    const saved = await (asNew || file.handle === null
      ? bridge.saveProjectAs(written, name)
      : bridge.saveProject(saving));
    if (!saved.ok) await tellFailure(saved.issues, asNew, name);
    if (!saved.ok) return 'failed';
    if (!saved.value) return 'cancelled';
    // another project may have been opened while this one was written
    if (projectStore.getState().file === file) {
      const { handle, name: savedName, path, version } = saved.value;
      markSaved(project, { handle, name: savedName, path, version });
    }
    tellSaved(saved.value);
    return 'saved';
  } finally {
    underWay -= 1;
  }
}

/** Writes the project back to its file, or asks for one. */
export const saveProject = (): Promise<SaveOutcome> => save(false);

/** Writes the project to a file that the person chooses. */
export const saveProjectAs = (): Promise<SaveOutcome> => save(true);
