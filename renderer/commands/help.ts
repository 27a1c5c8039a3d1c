/** Commands that help along. */

import { openEvidence } from '../checks/store.ts';
import { openHandbook } from '../handbook/store.ts';
import { setView } from '../store/view.ts';
import { checksText } from '../strings/checks.ts';
import { handbookText } from '../strings/handbook.ts';
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
  { id: 'handbook', label: handbookText.command, enabled: always, perform: () => openHandbook() },
  { id: 'evidence', label: checksText.command, enabled: always, perform: () => openEvidence() },
  { id: 'about', label: safeText.about.command, enabled: always, perform: () => setView({ dialog: 'about' }) },
];
