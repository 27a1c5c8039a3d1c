/** A worker that evaluates designs of a search. */

import { config } from 'zod';
import { searchDesk } from './desk.ts';
import type { SearchAsk } from './protocol.ts';

// The content security policy forbids code made from text, which zod would otherwise try.
config({ jitless: true });

const desk = searchDesk();

self.onmessage = (event: MessageEvent<SearchAsk>) => {
  try {
    const answer = desk(event.data);
    if (answer) self.postMessage(answer);
  } catch (fault) {
    const message = fault instanceof Error ? `${fault.name}: ${fault.message}` : String(fault);
    self.postMessage({ kind: 'fault', message });
  }
};
