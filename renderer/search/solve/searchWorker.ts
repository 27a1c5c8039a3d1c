/** A worker that evaluates designs of a search. */

import { config } from 'zod';
import { answeringOnce } from '../../solve/answering.ts';
import { searchDesk } from './desk.ts';

// The content security policy forbids code made from text, which zod would otherwise try.
config({ jitless: true });

self.onmessage = answeringOnce(searchDesk(), (answer) => self.postMessage(answer));
