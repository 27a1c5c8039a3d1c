/** Commands on the project as a file: new, open, save, hand over, materials in and out. */

import { getBridge } from '../bridge.ts';
import { beginNew, openPrevious, openProject, reloadFile, saveProject, saveProjectAs } from '../files.ts';
import { openHandover } from '../handover/store.ts';
import { exportMaterial, importMaterial, runMaterialId } from '../panels/granulate/materialFiles.ts';
import { recoveryStore } from '../safekeeping/recovery.ts';
import { projectStore } from '../store/project.ts';
import { setView } from '../store/view.ts';
import { handoverText } from '../strings/handover.ts';
import { safeText } from '../strings/safekeeping.ts';
import { newText } from '../strings/templates.ts';
import { text } from '../strings.ts';
import type { Command } from './types.ts';
import { always, isOpen } from './when.ts';

/** While the project has a file that the host can read and write. */
const hasFile = (): boolean => projectStore.getState().file.handle !== null;

/** In the order of the menu. */
export const projectCommands: readonly Command[] = [
  { id: 'new', label: newText.command, keys: 'Mod+Alt+N', enabled: always, perform: beginNew },
  { id: 'open', label: text.commands.open, keys: 'Mod+O', enabled: always, perform: openProject },
  { id: 'examples', label: text.commands.examples, enabled: always, perform: () => setView({ dialog: 'examples' }) },
  { id: 'recent', label: safeText.recent.command, enabled: always, perform: () => setView({ dialog: 'recent' }) },
  {
    id: 'recovery',
    label: safeText.recovery.command,
    enabled: () => recoveryStore.getState().waiting.length > 0,
    perform: () => setView({ dialog: 'recovery' }),
  },
  {
    id: 'save',
    label: text.commands.save,
    keys: 'Mod+S',
    enabled: isOpen,
    perform: async () => void (await saveProject()),
  },
  {
    id: 'save-as',
    label: text.commands.saveAs,
    keys: 'Mod+Shift+S',
    enabled: isOpen,
    perform: async () => void (await saveProjectAs()),
  },
  { id: 'reload', label: safeText.file.reload, enabled: hasFile, perform: reloadFile },
  { id: 'previous', label: safeText.file.previous, enabled: hasFile, perform: openPrevious },
  { id: 'new-window', label: safeText.newWindow, enabled: always, perform: () => getBridge().newWindow() },
  { id: 'handover', label: handoverText.command, keys: 'Mod+E', enabled: isOpen, perform: () => openHandover() },
  { id: 'import-material', label: text.describe.granulate.importCommand, enabled: isOpen, perform: importMaterial },
  {
    id: 'export-material',
    label: text.describe.granulate.exportCommand,
    enabled: () => runMaterialId() !== null,
    perform: () => exportMaterial(runMaterialId() ?? ''),
  },
];
