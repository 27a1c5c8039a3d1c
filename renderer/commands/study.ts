/** Commands that open a study: search, colour, doubt, bench log, viscosity fit. */

import { openBench } from '../bench/store.ts';
import { openFit } from '../fit/store.ts';
import { runMaterialId } from '../panels/granulate/materialFiles.ts';
import { setView, type ViewState } from '../store/view.ts';
import { benchText } from '../strings/bench.ts';
import { colourText } from '../strings/colour.ts';
import { doubtText } from '../strings/doubt.ts';
import { fitText } from '../strings/fit.ts';
import { searchText } from '../strings/search.ts';
import type { Command } from './types.ts';
import { isOpen } from './when.ts';

const opening = (dialog: ViewState['dialog'], label: string, keys: string): Command => ({
  id: dialog,
  label,
  keys,
  enabled: isOpen,
  perform: () => setView({ dialog }),
});

/** In the order of the menu. */
export const studyCommands: readonly Command[] = [
  opening('search', searchText.command, 'Mod+Shift+F'),
  opening('colour', colourText.command, 'Alt+6'),
  opening('doubt', doubtText.command, 'Alt+7'),
  { id: 'bench', label: benchText.command, keys: 'Mod+L', enabled: isOpen, perform: () => openBench() },
  {
    id: 'fit-viscosity',
    label: fitText.command,
    enabled: () => runMaterialId() !== null,
    perform: () => openFit(runMaterialId() ?? ''),
  },
];
