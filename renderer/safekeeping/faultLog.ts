/** Hands faults of the window to the host's log; the log tells what happened when somebody asks later. */

import { getBridge } from '../bridge.ts';
import { evaluationStore } from '../store/evaluation.ts';

/** Most faults that are handed over in a minute: a fault in a loop must not fill the disk. */
const mostInAMinute = 20;

let handedOver: number[] = [];

const worded = (fault: unknown): string =>
  fault instanceof Error ? (fault.stack ?? `${fault.name}: ${fault.message}`) : String(fault);

/** Says that layout went on for another frame; no fault. */
const harmless = /^ResizeObserver loop/;

/** Writes one fault to the log. `where`: the part of the window that it comes from. */
export function logFault(fault: unknown, where: string, now = Date.now()): void {
  const message = worded(fault);
  handedOver = handedOver.filter((at) => now - at < 60_000);
  if (harmless.test(message) || handedOver.length >= mostInAMinute) return;
  handedOver.push(now);
  // a log that cannot be written must not make a fault of its own
  getBridge()
    .logFault(message.slice(0, 4_000), where.slice(0, 200))
    .catch(() => undefined);
}

/** Listens for faults that nobody caught, and for broken calculations; answers with the function that stops it. */
export function listenToFaults(): () => void {
  const onError = (event: ErrorEvent) => logFault(event.error ?? event.message, `window ${event.filename ?? ''}`);
  const onRejection = (event: PromiseRejectionEvent) => logFault(event.reason, 'promise');
  window.addEventListener('error', onError);
  window.addEventListener('unhandledrejection', onRejection);
  const stop = evaluationStore.subscribe(({ fault }, before) => {
    if (fault !== null && fault !== before.fault) logFault(fault, 'calculation');
  });
  return () => {
    window.removeEventListener('error', onError);
    window.removeEventListener('unhandledrejection', onRejection);
    stop();
  };
}
