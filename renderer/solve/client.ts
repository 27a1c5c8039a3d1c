/** The window's side of the worker: one run at a time, the latest request wins, a long overtaken run is ended. */

import type { Answer, Request } from './protocol.ts';

/** The part of Worker that is used, so that tests can stand in for it. */
export interface WorkerLike {
  postMessage(message: unknown): void;
  terminate(): void;
  onmessage: ((event: MessageEvent<Answer>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}

/** A request before it has a number. */
export type Wanted = Omit<Request, 'run'>;

/** A run overtaken after this long is ended instead of waited for, ms. */
export const endAfterMs = 250;

/** Runs requests in a worker, which is started at the first one and again after it was ended or broke. */
export class SolveClient {
  private worker: WorkerLike | null = null;
  private active: { run: number; since: number; wanted: Wanted } | null = null;
  private waiting: Wanted | null = null;
  private timer: ReturnType<typeof setTimeout> | null = null;
  private lastRun = 0;

  constructor(
    private readonly startWorker: () => WorkerLike,
    private readonly hear: (answer: Answer) => void,
  ) {}

  /** Asks for a prediction; an earlier request that has not begun is dropped. */
  request(wanted: Wanted): void {
    if (!this.active) {
      this.begin(wanted);
      return;
    }
    this.waiting = wanted;
    const spare = endAfterMs - (Date.now() - this.active.since);
    this.timer ??= setTimeout(() => this.overtake(), Math.max(0, spare));
  }

  /** Ends the worker for good. */
  close(): void {
    this.end();
    this.waiting = null;
  }

  private begin(wanted: Wanted): void {
    const run = ++this.lastRun;
    this.active = { run, since: Date.now(), wanted };
    this.worker ??= this.start();
    this.worker.postMessage({ ...wanted, run } satisfies Request);
  }

  private start(): WorkerLike {
    const worker = this.startWorker();
    worker.onmessage = (event) => this.answer(event.data);
    worker.onerror = (event) => this.broke(event.message || 'the calculation stopped without saying why');
    return worker;
  }

  private answer(answer: Answer): void {
    if (answer.run !== this.active?.run) return;
    if (answer.kind !== 'shape' && answer.kind !== 'progress') this.active = null;
    this.hear(answer);
    if (!this.active) this.beginWaiting();
  }

  private broke(message: string): void {
    const run = this.active?.run ?? this.lastRun;
    this.end();
    this.hear({ kind: 'fault', run, message });
    this.beginWaiting();
  }

  private overtake(): void {
    this.timer = null;
    if (!this.waiting) return;
    if (this.active) this.end();
    this.beginWaiting();
  }

  private beginWaiting(): void {
    if (this.timer) clearTimeout(this.timer);
    this.timer = null;
    const wanted = this.waiting;
    this.waiting = null;
    if (wanted) this.begin(wanted);
  }

  private end(): void {
    this.worker?.terminate();
    this.worker = null;
    this.active = null;
    if (this.timer) clearTimeout(this.timer);
    this.timer = null;
  }
}
