/** `npm run -s fuzz -- [COUNT] [SEED] [NAME]`: hostile cases by the thousand, each with a limit on its time and memory. */

import { Worker } from 'node:worker_threads';
import type { CaseAnswer, CaseTask } from './campaignWorker.ts';
import type { Recipe } from './mutate.ts';
import { hostileSeed } from './recipes.ts';
import { smaller } from './shrink.ts';
import { targets } from './targets.ts';

/** Longest computing time of a case, ms (a machine that others use counts for nothing), and largest heap of the thread that reads, MB. */
const [longestMs, largestMb] = [2000, 400];

const [count = 2000, seed = hostileSeed()] = process.argv.slice(2, 4).map(Number);
/** Parts of the names of readers, separated by commas. */
const only = (process.argv[4] ?? '').split(',');

/** FUZZ_SECONDS: after so long the record is closed with what was done. */
const closesAt = performance.now() + 1000 * Number(process.env.FUZZ_SECONDS ?? Number.POSITIVE_INFINITY);
const outOfTime = 'out of time';

/** A target's record. */
interface Line {
  readonly name: string;
  cases: number;
  refused: number;
  accepted: number;
  faults: number;
  slowestMs: number;
  slowest: number;
}

let peakBytes = 0;
const look = setInterval(() => {
  peakBytes = Math.max(peakBytes, process.memoryUsage().rss);
}, 20);

/** Computing time of this process so far, ms: the thread's, since all others wait for it. */
const busyMs = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

let thread: Worker | null = null;

/** Asks the thread to run cases; hears each answer. Ends early where one takes too long or the thread dies. */
function ask(task: CaseTask, hear: (answer: CaseAnswer) => void): Promise<string | null> {
  return new Promise((resolve) => {
    thread ??= new Worker(new URL('./campaignWorker.ts', import.meta.url), {
      execArgv: ['--import', new URL('../nativeCore.mjs', import.meta.url).href],
      resourceLimits: { maxOldGenerationSizeMb: largestMb },
    });
    const worker = thread;
    let begun = Number.POSITIVE_INFINITY;
    const timer = setInterval(() => {
      if (performance.now() > closesAt) end(outOfTime);
      else if (busyMs() - begun > longestMs) end(`took longer than ${longestMs} ms`);
    }, 50);
    const end = (why: string | null): void => {
      clearInterval(timer);
      worker.removeAllListeners();
      if (why !== null) {
        thread = null;
        void worker.terminate();
      }
      resolve(why);
    };
    worker.on('error', (error) => end(`the thread died: ${error.message}`));
    worker.on('message', (answer: CaseAnswer | 'ready' | 'done') => {
      if (answer === 'done') return end(null);
      begun = answer === 'ready' || answer.kind === 'begins' ? busyMs() : Number.POSITIVE_INFINITY;
      if (answer !== 'ready') hear(answer);
    });
    worker.postMessage(task);
  });
}

/** Why a case fails, or null. */
async function whyOf(target: number, recipe: Recipe | null, input: string | null): Promise<string | null> {
  let told: string | null = null;
  const died = await ask({ target, seed: 0, from: 0, to: 1, recipe, input }, ({ fault }) => {
    told = fault;
  });
  return died ?? told;
}

async function tellFault(target: number, line: Line, index: number, recipe: Recipe, why: string): Promise<void> {
  line.faults++;
  const again = await whyOf(target, recipe, null);
  if (again === null) {
    line.faults--;
    console.log(`  ${line.name} case ${index}: ${why.slice(0, 120)} – not so when run again alone`);
    return;
  }
  const { steps, input } = await smaller(
    recipe,
    (r) => targets[target]?.make(r) ?? '',
    (r, text) => whyOf(target, r, text),
  );
  console.log(`FAULT ${line.name}, seed ${seed}, case ${index}: ${again.slice(0, 600)}`);
  console.log(`  recipe ${JSON.stringify({ pick: recipe.pick, steps })}`);
  console.log(`  input (${input.length} characters) ${JSON.stringify(input.slice(0, 700))}`);
}

async function attack(target: number, cases: number): Promise<Line> {
  const name = targets[target]?.name ?? '';
  const line: Line = { name, cases: 0, refused: 0, accepted: 0, faults: 0, slowestMs: 0, slowest: -1 };
  const seen = new Map<string, number>();
  for (let from = 0; from < cases; ) {
    const failed: { index: number; why: string; recipe: Recipe }[] = [];
    let next = from;
    let running: Recipe | null = null;
    const died = await ask({ target, seed, from, to: cases, recipe: null, input: null }, (answer) => {
      if (answer.kind === 'begins') {
        running = answer.recipe;
        return;
      }
      line.cases++;
      next++;
      if (answer.ms > line.slowestMs) [line.slowestMs, line.slowest] = [answer.ms, answer.index];
      if (answer.fault === null) line[answer.outcome ?? 'refused']++;
      else if (running) failed.push({ index: answer.index, why: answer.fault, recipe: running });
    });
    if (died !== null && process.env.FUZZ_TELL) console.error(name, next, died);
    if (died !== null && died !== outOfTime && running) {
      line.cases++;
      failed.push({ index: next, why: died, recipe: running });
      next++;
    }
    for (const { index, why, recipe } of failed) {
      const kind = why.replace(/-?\d[\d.e+-]*/g, '#').slice(0, 160);
      const times = (seen.get(kind) ?? 0) + 1;
      seen.set(kind, times);
      if (times <= 3) await tellFault(target, line, index, recipe, why);
      else line.faults++;
    }
    if (died === null || died === outOfTime) break;
    from = next;
  }
  return line;
}

function show(lines: readonly Line[]): void {
  const pad = (text: string | number, width: number) => String(text).padStart(width);
  console.log(
    `${'reader'.padEnd(34)}${pad('cases', 8)}${pad('refused', 9)}${pad('accepted', 9)}${pad('faults', 7)}  slowest, ms (case)`,
  );
  for (const { name, cases, refused, accepted, faults, slowestMs, slowest } of lines) {
    const counts = `${pad(cases, 8)}${pad(refused, 9)}${pad(accepted, 9)}${pad(faults, 7)}`;
    console.log(`${name.padEnd(34)}${counts}  ${slowestMs.toFixed(0)} (${slowest})`);
  }
  const sum = (of: (line: Line) => number) => lines.reduce((total, line) => total + of(line), 0);
  console.log(
    `${sum((l) => l.cases)} cases, ${sum((l) => l.faults)} faults, peak memory ${(peakBytes / 1e6).toFixed(0)} MB, seed ${seed}`,
  );
}

const wanted = targets
  .map((target, i) => [target, i] as const)
  .filter(([{ name }]) => only.some((part) => name.includes(part)));
const whole = wanted.reduce((sum, [{ share }]) => sum + share, 0);
const record: Line[] = [];
for (const [{ share }, index] of wanted) {
  record.push(await attack(index, Math.ceil((count * share) / whole)));
  if (process.stderr.isTTY || process.env.FUZZ_TELL) console.error(JSON.stringify(record.at(-1)));
}
clearInterval(look);
await (thread as Worker | null)?.terminate();
show(record);
process.exitCode = record.some(({ faults }) => faults > 0) ? 1 : 0;
