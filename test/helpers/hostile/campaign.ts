/** `npm run -s fuzz -- [COUNT] [SEED] [READERS]`: hostile cases by the thousand, each with a limit on its time and memory. */

import { ask, endThread, outOfTime, whyOf } from './campaignThread.ts';
import type { CaseAnswer } from './campaignWorker.ts';
import type { Recipe } from './mutate.ts';
import { hostileSeed } from './recipes.ts';
import { smaller } from './shrink.ts';
import { targets } from './targets.ts';

const [count = 2000, seed = hostileSeed()] = process.argv.slice(2, 4).map(Number);
/** Parts of the names of readers, separated by commas. */
const only = (process.argv[4] ?? '').split(',');
/** Faults of one kind that are told in full. */
const toldOfAKind = 3;

/** A reader's record. */
interface Line {
  readonly name: string;
  cases: number;
  refused: number;
  accepted: number;
  faults: number;
  slowestMs: number;
  slowest: number;
}

/** A case that went wrong. */
interface Failure {
  readonly index: number;
  readonly why: string;
  readonly recipe: Recipe;
}

let peakBytes = 0;
const look = setInterval(() => {
  peakBytes = Math.max(peakBytes, process.memoryUsage().rss);
}, 20);

async function tellFault(target: number, name: string, { index, why, recipe }: Failure): Promise<void> {
  const again = await whyOf(target, recipe, null);
  console.log(`FAULT ${name}, seed ${seed}, case ${index}: ${why.slice(0, 600)}`);
  if (again === null) console.log('  not so when run again alone');
  if (again === null || again === outOfTime) return console.log(`  recipe ${JSON.stringify(recipe)}`);
  const make = (each: Recipe) => targets[target]?.make(each) ?? '';
  const { steps, input } = await smaller(recipe, make, (each, text) => whyOf(target, each, text));
  console.log(`  recipe ${JSON.stringify({ pick: recipe.pick, steps })}`);
  console.log(`  input (${input.length} characters) ${JSON.stringify(input.slice(0, 700))}`);
}

/** Runs cases until the last one or until the thread ends. */
async function stretch(target: number, line: Line, from: number, cases: number) {
  const failed: Failure[] = [];
  let next = from;
  let recipe: Recipe = { pick: 0, steps: [] };
  const died = await ask({ target, seed, from, to: cases, recipe: null, input: null }, (answer: CaseAnswer) => {
    if (answer.kind === 'begins') {
      recipe = answer.recipe;
      return;
    }
    const { index, ms, outcome, fault } = answer;
    line.cases++;
    next = index + 1;
    if (ms > line.slowestMs) [line.slowestMs, line.slowest] = [ms, index];
    if (fault === null) line[outcome ?? 'refused']++;
    else failed.push({ index, why: fault, recipe });
  });
  const stopped = died === null || died === outOfTime;
  if (!stopped) failed.push({ index: next, why: died, recipe });
  line.cases += stopped ? 0 : 1;
  return { failed, next: stopped ? cases : next + 1 };
}

async function attack(target: number, cases: number): Promise<Line> {
  const name = targets[target]?.name ?? '';
  const line: Line = { name, cases: 0, refused: 0, accepted: 0, faults: 0, slowestMs: 0, slowest: -1 };
  const seen = new Map<string, number>();
  for (let from = 0; from < cases; ) {
    const { failed, next } = await stretch(target, line, from, cases);
    from = next;
    for (const failure of failed) {
      const kind = failure.why.replace(/-?\d[\d.e+-]*/g, '#').slice(0, 160);
      seen.set(kind, (seen.get(kind) ?? 0) + 1);
      line.faults++;
      if ((seen.get(kind) ?? 0) <= toldOfAKind) await tellFault(target, name, failure);
    }
  }
  return line;
}

function show(lines: readonly Line[]): void {
  const pad = (text: string | number, width: number) => String(text).padStart(width);
  const heads = `${pad('cases', 8)}${pad('refused', 9)}${pad('accepted', 9)}${pad('faults', 7)}`;
  console.log(`${'reader'.padEnd(34)}${heads}  slowest, ms (case)`);
  for (const { name, cases, refused, accepted, faults, slowestMs, slowest } of lines) {
    const counts = `${pad(cases, 8)}${pad(refused, 9)}${pad(accepted, 9)}${pad(faults, 7)}`;
    console.log(`${name.padEnd(34)}${counts}  ${slowestMs.toFixed(0)} (${slowest})`);
  }
  const sum = (of: (line: Line) => number) => lines.reduce((total, line) => total + of(line), 0);
  const peak = `peak memory ${(peakBytes / 1e6).toFixed(0)} MB`;
  console.log(`${sum((l) => l.cases)} cases, ${sum((l) => l.faults)} faults, ${peak}, seed ${seed}`);
}

const wanted = targets
  .map((target, i) => [target, i] as const)
  .filter(([{ name }]) => only.some((part) => name.includes(part)));
const whole = wanted.reduce((sum, [{ share }]) => sum + share, 0);
const record: Line[] = [];
for (const [{ share }, index] of wanted) {
  record.push(await attack(index, Math.ceil((count * share) / whole)));
  if (process.env.FUZZ_TELL) console.error(JSON.stringify(record.at(-1)));
}
clearInterval(look);
await endThread();
show(record);
process.exitCode = record.some(({ faults }) => faults > 0) ? 1 : 0;
