/** The window's side of the worker: one run at a time, the latest request wins, a long overtaken run is ended. */

import { type Answer, endsRun, type Request } from './protocol.ts';

/** The part of Worker that is used, so that tests can stand in for it. */
export interface WorkerLike {
  postMessage(message: unknown): void;
  terminate(): void;
  onmessage: ((event: MessageEvent<Answer>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}

/** A request before it has a number. */
export type Wanted = Omit<Request, 'run'>;

/** A run overtaken after this long is ended instead of waited for, ms: a new worker takes about as long to warm up. */
export const endAfterMs = 800;

/** How long an overtaken run may still go on, ms; 0 or less ends it. */
export type Patience = (run: { readonly sinceMs: number; readonly done: number }) => number;

const briefly: Patience = ({ sinceMs }) => endAfterMs - sinceMs;

interface ActiveRun {
  readonly run: number;
  readonly since: number;
  /** share done, 0 to 1 */
  done: number;
  /** given up: its answers are not passed on */
  unheard: boolean;
  /** the worker was told to give it up */
  told: boolean;
}

/** Runs requests in a worker, which is started at the first one and again after it was ended or broke. */
export class SolveClient {
  private worker: WorkerLike | null = null;
  private active: ActiveRun | null = null;
  private waiting: Wanted | null = null;
  private timer: ReturnType<typeof setTimeout> | null = null;
  private lastRun = 0;

  constructor(
    private readonly startWorker: () => WorkerLike,
    private readonly hear: (answer: Answer) => void,
    private readonly patience: Patience = briefly,
    /** tells the worker to give a run up and stay; false where it cannot be told and must be ended */
    private readonly giveUp: (run: number) => boolean = () => false,
  ) {}

  /** Asks for a prediction; an earlier request that has not begun is dropped. */
  request(wanted: Wanted): void {
    if (!this.active) {
      this.begin(wanted);
      return;
    }
    this.waiting = wanted;
    this.timer ??= setTimeout(() => this.overtake(), Math.max(0, this.spare(this.active)));
  }

  /** Gives up what runs or waits; the run may go on for as long as patience allows, but is no longer heard. */
  drop(): void {
    this.waiting = null;
    if (!this.active) return;
    this.active.unheard = true;
    this.timer ??= setTimeout(() => this.overtake(), Math.max(0, this.spare(this.active)));
  }

  /** Ends the worker for good. */
  close(): void {
    this.end();
    this.waiting = null;
  }

  private spare({ since, done }: ActiveRun): number {
    return this.patience({ sinceMs: Date.now() - since, done });
  }

  private begin(wanted: Wanted): void {
    const run = ++this.lastRun;
    this.active = { run, since: Date.now(), done: 0, unheard: false, told: false };
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
    const { active } = this;
    if (!active || answer.run !== active.run) return;
    if (answer.kind === 'progress') active.done = answer.done;
    else if (endsRun(answer)) this.active = null;
    if (!active.unheard && answer.kind !== 'givenUp') this.hear(answer);
    if (!this.active) this.beginWaiting();
  }

  private broke(message: string): void {
    const run = this.active?.run ?? this.lastRun;
    const unheard = this.active?.unheard ?? false;
    this.end();
    if (!unheard) this.hear({ kind: 'fault', run, message });
    this.beginWaiting();
  }

  private overtake(): void {
    this.timer = null;
    const { active } = this;
    if (!active || !(this.waiting || active.unheard)) return;
    const wait = active.told ? 0 : Math.max(0, this.spare(active)) || this.tellToGiveUp(active);
    if (wait > 0) {
      this.timer = setTimeout(() => this.overtake(), wait);
      return;
    }
    this.end();
    this.beginWaiting();
  }

  /** How long the worker has for giving its run up, ms; 0 where it cannot be told. */
  private tellToGiveUp(active: ActiveRun): number {
    active.told = this.giveUp(active.run);
    return active.told ? endAfterMs : 0;
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
