/** Commands on the project as a file: new, open, save, hand over, materials in and out. */

import { beginNew, openProject, saveProject, saveProjectAs } from '../files.ts';
import { openHandover } from '../handover/store.ts';
import { exportMaterial, importMaterial, runMaterialId } from '../panels/granulate/materialFiles.ts';
import { setView } from '../store/view.ts';
import { handoverText } from '../strings/handover.ts';
import { newText } from '../strings/templates.ts';
import { text } from '../strings.ts';
import type { Command } from './types.ts';
import { always, isOpen } from './when.ts';

/** In the order of the menu. */
export const projectCommands: readonly Command[] = [
  { id: 'new', label: newText.command, keys: 'Mod+Alt+N', enabled: always, perform: beginNew },
  { id: 'open', label: text.commands.open, keys: 'Mod+O', enabled: always, perform: openProject },
  { id: 'examples', label: text.commands.examples, enabled: always, perform: () => setView({ dialog: 'examples' }) },
  { id: 'save', label: text.commands.save, keys: 'Mod+S', enabled: isOpen, perform: saveProject },
  { id: 'save-as', label: text.commands.saveAs, keys: 'Mod+Shift+S', enabled: isOpen, perform: saveProjectAs },
  { id: 'handover', label: handoverText.command, keys: 'Mod+E', enabled: isOpen, perform: () => openHandover() },
  { id: 'import-material', label: text.describe.granulate.importCommand, enabled: isOpen, perform: importMaterial },
  {
    id: 'export-material',
    label: text.describe.granulate.exportCommand,
    enabled: () => runMaterialId() !== null,
    perform: () => exportMaterial(runMaterialId() ?? ''),
  },
];
