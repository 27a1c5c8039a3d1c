/** Files dragged into the window: a project opens, a material or a table of trials goes into the open project. */

import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import { findJsonFault, type Issue, materialFormat } from '../../core/index.ts';
import { openBench, setBench } from '../bench/store.ts';
import { readFile } from '../bridgeFiles.ts';
import { openDroppedProject } from '../files.ts';
import { takeMaterialText } from '../panels/granulate/materialFiles.ts';
import { currentProject } from '../store/project.ts';
import { safeText } from '../strings/safekeeping.ts';
import { showFaults } from './faults.ts';
import { stay, unstay } from './notices.ts';

const words = safeText.drop;

/** Whether files hang over the window. */
const dropStore = createStore<{ readonly over: boolean }>(() => ({ over: false }));

/** The same, followed by a view. */
export const useDropOver = (): boolean => useStore(dropStore, (state) => state.over);

const tell = (text: string): void => stay({ subject: 'drop', kind: 'bad', text });

const unknownIssue = (file: File): Issue => ({
  path: [file.name],
  code: 'drop-unknown',
  message: words.unknown,
  remedy: words.remedy,
});

/** Whether a text says of itself that it is a material. */
function isMaterial(text: string): boolean {
  try {
    return findJsonFault(text, 100) === null && Reflect.get(Object(JSON.parse(text)), 'format') === materialFormat;
  } catch {
    return false;
  }
}

async function takeTable(file: File): Promise<void> {
  const read = await readFile(file);
  if (!read.ok) return showFaults(file.name, read.issues);
  if (!currentProject()) return tell(words.first);
  setBench({ table: { name: read.value.name, text: read.value.text, choices: {} } });
  openBench('import');
}

async function takeJson(file: File): Promise<void> {
  const read = await readFile(file);
  if (!read.ok) return showFaults(file.name, read.issues);
  if (!isMaterial(read.value.text)) return openDroppedProject(file);
  if (!currentProject()) return tell(words.first);
  takeMaterialText(read.value);
}

/** Takes what was dropped; every refusal is told with the file's name. */
export async function takeDropped(files: readonly File[]): Promise<void> {
  unstay('drop');
  const [file] = files;
  if (!file) return;
  if (files.length > 1) return tell(words.many(files.length));
  if (/\.(csv|tsv|txt)$/i.test(file.name)) return takeTable(file);
  if (/\.(json|augerwright)$/i.test(file.name)) return takeJson(file);
  showFaults(file.name, [unknownIssue(file)]);
}

const carriesFiles = (event: DragEvent): boolean => event.dataTransfer?.types.includes('Files') ?? false;

/** Makes the whole window a place to drop files on; answers with the function that stops it. */
export function listenToDrops(): () => void {
  // entering a part of the window leaves the one before it, so both are counted
  let depth = 0;
  const set = (next: number) => {
    depth = Math.max(0, next);
    dropStore.setState({ over: depth > 0 });
  };
  const enter = (event: DragEvent) => carriesFiles(event) && set(depth + 1);
  const leave = (event: DragEvent) => carriesFiles(event) && set(depth - 1);
  const over = (event: DragEvent) => {
    if (!carriesFiles(event)) return;
    event.preventDefault();
    if (event.dataTransfer) event.dataTransfer.dropEffect = 'copy';
  };
  const drop = (event: DragEvent) => {
    if (!carriesFiles(event)) return;
    event.preventDefault();
    set(0);
    void takeDropped([...(event.dataTransfer?.files ?? [])]);
  };
  const listeners = { dragenter: enter, dragleave: leave, dragover: over, drop } as const;
  for (const [name, listener] of Object.entries(listeners)) window.addEventListener(name, listener as EventListener);
  return () => {
    for (const [name, listener] of Object.entries(listeners))
      window.removeEventListener(name, listener as EventListener);
  };
}
