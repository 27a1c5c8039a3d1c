/** Commands that help along. */

import { setView } from '../store/view.ts';
import { safeText } from '../strings/safekeeping.ts';
import { tourText } from '../strings/tour.ts';
import { text } from '../strings.ts';
import { startTour } from '../tour/store.ts';
import type { Command } from './types.ts';
import { always, isOpen } from './when.ts';

/** In the order of the menu. */
export const helpCommands: readonly Command[] = [
  {
    id: 'commands',
    label: text.commands.list,
    keys: 'Mod+K',
    enabled: always,
    perform: () => setView({ dialog: 'commands' }),
  },
  {
    id: 'tour',
    label: tourText.command,
    enabled: isOpen,
    perform: () => {
      setView({ dialog: 'none' });
      startTour();
    },
  },
  { id: 'about', label: safeText.about.command, enabled: always, perform: () => setView({ dialog: 'about' }) },
];
