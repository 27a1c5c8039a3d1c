/** The worker's side of a job. */

/** What a worker says of what broke in it. */
export const faultOf = (fault: unknown) => ({
  kind: 'fault' as const,
  message: fault instanceof Error ? `${fault.name}: ${fault.message}` : String(fault),
});

/** Lets a worker answer with a stream: every answer is sent as it is made, then that it is done. */
export function answering<Ask>(make: (ask: Ask) => Iterable<unknown>, post: (answer: unknown) => void) {
  return (event: MessageEvent<Ask>): void => {
    try {
      for (const answer of make(event.data)) post(answer);
      post({ kind: 'done' });
    } catch (fault) {
      post(faultOf(fault));
    }
  };
}

/** Lets a worker answer each question once, or not at all where there is nothing to say. */
export function answeringOnce<Ask>(answerTo: (ask: Ask) => object | null, post: (answer: unknown) => void) {
  return (event: MessageEvent<Ask>): void => {
    try {
      const answer = answerTo(event.data);
      if (answer) post(answer);
    } catch (fault) {
      post(faultOf(fault));
    }
  };
}
