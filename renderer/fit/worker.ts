/** A worker that fits viscosity laws. */

import { config } from 'zod';
import { answering } from '../solve/answering.ts';
import { fitAnswers } from './solve/desk.ts';

// The content security policy forbids code made from text, which zod would otherwise try.
config({ jitless: true });

self.onmessage = answering(fitAnswers, (answer) => self.postMessage(answer));
