/**
 * Keeps the work with the host between saves: after every edit, and after every text typed into a field. The first
 * change goes at once, further ones at most twice a second, after the window has painted.
 */

import { issueText, type Project, type Result } from '../../core/index.ts';
import { getBridge, type JournalEntry } from '../bridge.ts';
import { type Draft, draftStore } from '../store/drafts.ts';
import { isUnsaved, type ProjectState, projectStore } from '../store/project.ts';
import { safeText } from '../strings/safekeeping.ts';
import { journalText } from './journalText.ts';
import { stay, staying, unstay } from './notices.ts';
import { saveProjectAs } from './saving.ts';
import { windowId } from './windowId.ts';

const words = safeText.journal;

/** Shortest time between two entries, ms. */
export const entryEveryMs = 500;
/** An entry waits for a quiet moment no longer than this, ms. */
const patienceMs = 250;
/** A failed entry is sent again after this, ms. */
const againAfterMs = 5_000;

type Drafts = Readonly<Record<string, Draft>>;

/** What was kept last, compared by identity. */
interface Kept {
  readonly project: Project | null;
  readonly drafts: Drafts | null;
}

const nothing: Kept = { project: null, drafts: null };

let kept: Kept = nothing;
let isOpen = false;
/** What is kept belongs to an earlier save or another project. */
let outdated = false;
let steps: string[] = [];
let timer: ReturnType<typeof setTimeout> | null = null;
let lastAt = Number.NEGATIVE_INFINITY;
/** Calls go one after the other, so that no close overtakes a write. */
let line: Promise<unknown> = Promise.resolve();
let underWay = 0;

const inLine = <T>(call: () => Promise<Result<T>>): Promise<Result<T>> => {
  underWay += 1;
  const answered = line.then(call).finally(() => {
    underWay -= 1;
  });
  line = answered.catch(() => undefined);
  return answered;
};

const isDirty = (): boolean => isUnsaved(projectStore.getState()) || Object.keys(draftStore.getState()).length > 0;

/** The work as it is now, as an entry; null where no project is open. Lengths are those that the host allows. */
function entryNow(step: string): JournalEntry | null {
  const { history, file } = projectStore.getState();
  if (!history) return null;
  const drafts = Object.entries(draftStore.getState()).slice(0, 200);
  return {
    handle: file.handle,
    name: (file.name || history.present.name).slice(0, 200),
    text: journalText(history.present),
    step: step.slice(0, 200),
    drafts: Object.fromEntries(drafts.map(([key, draft]) => [key.slice(0, 300), draft.text.slice(0, 2_000)])),
  };
}

/** Tells once that entries fail. Only a save ends that: a host may say no more of a fault that it told before. */
function tellFailure(written: Result<null>): void {
  if (written.ok || staying('journal')) return;
  stay({
    subject: 'journal',
    kind: 'bad',
    text: `${words.fails} ${written.issues.map(issueText).join(' ')}`,
    remedy: words.goesOn,
    acts: [
      { label: safeText.tryAgain, perform: keepNow },
      { label: safeText.saveAs, perform: saveProjectAs },
    ],
  });
}

function closeKept(): Promise<Result<null>> {
  isOpen = false;
  outdated = false;
  kept = nothing;
  return inLine(() => getBridge().closeJournal(windowId()));
}

async function send(): Promise<void> {
  const project = projectStore.getState().history?.present ?? null;
  const drafts = draftStore.getState();
  if (!isDirty()) {
    steps = [];
    if (isOpen && (await closeKept()).ok) unstay('journal');
    return;
  }
  if (isOpen && outdated && (await closeKept()).ok) unstay('journal');
  if (kept.project === project && kept.drafts === drafts) return;
  const entry = entryNow(steps.join('; '));
  if (!entry) return;
  const sent = steps;
  [kept, steps, isOpen, lastAt] = [{ project, drafts }, [], true, performance.now()];
  const written = await inLine(() => getBridge().writeJournal(windowId(), entry));
  if (written.ok) return;
  tellFailure(written);
  [kept, steps] = [nothing, [...sent, ...steps]];
  timer ??= setTimeout(ready, againAfterMs);
}

/** Sends what is new, and looks again afterwards for what came while it was sent. */
async function ready(): Promise<void> {
  timer = null;
  if (underWay === 0) await send();
  const behind = isDirty()
    ? kept.project !== projectStore.getState().history?.present || kept.drafts !== draftStore.getState()
    : isOpen;
  if (behind) schedule();
}

function schedule(): void {
  if (timer) return;
  const wait = Math.max(0, lastAt + entryEveryMs - performance.now());
  timer = setTimeout(() => {
    if ('requestIdleCallback' in globalThis) requestIdleCallback(() => void ready(), { timeout: patienceMs });
    else void ready();
  }, wait);
}

/** Keeps the work as it is at once, and waits until the host has it. */
export async function keepNow(): Promise<void> {
  if (timer) clearTimeout(timer);
  timer = null;
  await line;
  await send();
}

function noteStep(state: ProjectState, before: ProjectState): void {
  const [now, then] = [state.history, before.history];
  if (!now || now.present === then?.present) return;
  const back = then !== null && now.past.length < then.past.length;
  const label = back ? words.undone(now.future[0]?.label ?? '') : (now.past.at(-1)?.label ?? words.opened);
  if (steps.at(-1) !== label) steps.push(label);
}

/** Begins to keep the work; answers with the function that stops it. */
export function followWork(): () => void {
  const stops = [
    projectStore.subscribe((state, before) => {
      // saved, or another project: what was kept until now is no longer needed
      if (state.saved !== before.saved || (state.file !== before.file && state.history?.past.length === 0)) {
        outdated = isOpen;
        steps = [];
      }
      noteStep(state, before);
      schedule();
    }),
    draftStore.subscribe(schedule),
  ];
  const leave = () => void keepNow();
  const hidden = () => document.visibilityState === 'hidden' && leave();
  window.addEventListener('pagehide', leave);
  document.addEventListener('visibilitychange', hidden);
  if (isDirty()) schedule();
  return () => {
    for (const stop of stops) stop();
    window.removeEventListener('pagehide', leave);
    document.removeEventListener('visibilitychange', hidden);
    if (timer) clearTimeout(timer);
    [timer, kept, isOpen, outdated, steps, lastAt] = [null, nothing, false, false, [], Number.NEGATIVE_INFINITY];
  };
}
