/** The worker's side of a job. */

/** Lets a worker answer with a stream: every answer is sent as it is made, then that it is done. */
export function answering<Ask>(make: (ask: Ask) => Iterable<unknown>, post: (answer: unknown) => void) {
  return (event: MessageEvent<Ask>): void => {
    try {
      for (const answer of make(event.data)) post(answer);
      post({ kind: 'done' });
    } catch (fault) {
      post({ kind: 'fault', message: fault instanceof Error ? `${fault.name}: ${fault.message}` : String(fault) });
    }
  };
}
