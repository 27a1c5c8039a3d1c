/** `sweep FILE --vary PATH=FROM:TO:STEPS [--vary …] --out CSV`: every value of one input, or every pair of two. */

import { dirname, join } from 'node:path';
import {
  type Evaluated,
  fail,
  type Issue,
  ok,
  type Project,
  type Result,
  type SearchInput,
  type SweepPlan,
  searchInputs,
  sweepPlan,
} from '../../core/index.ts';
import { writeTextFile } from '../services/textFile.ts';
import { checkOut } from '../services/writeOut.ts';
import { type Command, type Output, refuse, status, tellUnknown } from './command.ts';
import { readWords, type Words } from './options.ts';
import { readDesigns, readProject } from './readDesign.ts';
import { sweepAll } from './sweepAll.ts';
import { axisForm, readAxis, takeAxes } from './sweepAxes.ts';
import { sweepCsv, sweepJson } from './sweepTable.ts';

/** Lines of progress over a whole sweep. */
const progressLines = 20;

/** All that a sweep needs, checked. */
interface Wanted {
  readonly project: Project;
  readonly revisionId: string;
  readonly inputs: readonly SearchInput[];
  readonly plan: SweepPlan;
}

const commandIssue = (message: string, remedy: string, allowed?: string): Issue => ({
  path: ['command line'],
  code: 'sweep-words',
  message,
  ...(allowed === undefined ? {} : { allowed }),
  remedy,
});

/** Faults of the words among each other. */
function wordIssues(words: Words, texts: readonly string[], usage: string): readonly Issue[] {
  const quiet = !words.flags.has('json') && !words.values.has('out');
  return [
    ...(texts.length < 1 || texts.length > 2
      ? [commandIssue('A sweep varies one or two inputs.', `Type: ${usage}`, `--vary ${axisForm} once or twice`)]
      : []),
    ...(quiet ? [commandIssue('Nothing says where the result goes.', 'Add --out FILE.csv, or --json.')] : []),
  ];
}

function wantedOf(project: Project, revisionId: string, texts: readonly string[]): Result<Wanted> {
  const known = readDesigns(project, [revisionId]);
  if (!known.ok) return known;
  const axes = texts.map(readAxis);
  const bad = axes.flatMap((axis) => (axis.ok ? [] : axis.issues));
  if (bad.length > 0) return fail(...bad);
  const all = searchInputs(project, revisionId);
  const plan = sweepPlan(
    project,
    revisionId,
    all,
    axes.flatMap((axis) => (axis.ok ? [axis.value] : [])),
  );
  if (!plan.ok) return plan;
  const inputs = plan.value.axes.flatMap(({ input }) => all.find(({ id }) => id === input) ?? []);
  return ok({ project, revisionId, inputs, plan: plan.value });
}

/** Says how far the sweep is, some twenty times in all. */
function progressTo(output: Output, all: number): (count: number) => void {
  const every = Math.max(1, Math.ceil(all / progressLines));
  return (count) => {
    if (count % every === 0 || count === all) output.problem(`${count} of ${all} designs`);
  };
}

function lastLine(designs: readonly Evaluated[], file: string): string {
  const holes = designs.filter(({ hole }) => hole !== null).length;
  return `${designs.length} designs written to ${file}; ${holes === 0 ? 'all deliver' : `${holes} refused or without output, with the reason`}.`;
}

/** The thread's bundle lies beside that of the other commands. */
const threadBeside = (workerPath: string | null): string | null =>
  workerPath === null ? null : join(dirname(workerPath), 'sweepWorker.mjs');

/** Writes what was found where it was asked for. */
async function handOut(wanted: Wanted, designs: readonly Evaluated[], words: Words, output: Output) {
  const { plan, inputs, revisionId } = wanted;
  const out = words.values.get('out');
  const json = words.flags.has('json');
  if (out !== undefined) {
    const written = await writeTextFile(out, sweepCsv(inputs, designs));
    if (!written.ok) return refuse(written.issues, output);
    if (!json) output.result(lastLine(designs, out));
  }
  if (json) output.result(JSON.stringify(sweepJson(plan, inputs, revisionId, designs), null, 2));
  return status.done;
}

/** The command; without --revision it takes the project's active one. */
export const sweepCommand: Command = {
  shape: {
    usage: `npm run -s sweep -- FILE --vary ${axisForm} [--vary ${axisForm}] [--revision ID] [--solved] --out CSV`,
    about: [
      'Evaluates every value of one input, or every pair of two.',
      `  --vary ${axisForm}  a number of the file by its place, or a joint input, in the unit of the file;`,
      '                 :log at the end takes even ratios, as in joint.lead=8:32:9:log',
      '                 joint inputs: joint.meteringRoot, joint.feedRoot, joint.compression, joint.lead,',
      '                 joint.flightWidth, joint.fillet, joint.temperature (a shift)',
      '  --revision ID  the revision; without it the active one',
      '  --solved       solve the flow fields of every design too (seconds each); without it estimates by formulas',
      '  --out CSV      where the table goes; units stand in its heads, refused designs stay with their reason',
      '  --json         the same as JSON on the output instead, or as well',
    ],
    flags: ['solved', 'json'],
    values: ['vary', 'revision', 'out'],
    words: [1, 1],
  },
  async run(given, output, workerPath) {
    const { texts, rest } = takeAxes(given);
    const words = readWords(this.shape, rest);
    if (!words.ok) return refuse(words.issues, output);
    const faults = wordIssues(words.value, texts, this.shape.usage);
    if (faults.length > 0) return refuse(faults, output);
    const [file = ''] = words.value.bare;
    const project = await readProject(file);
    if (!project.ok) return refuse(project.issues, output, file);
    tellUnknown(project.value, output, file);
    const revisionId = words.value.values.get('revision') ?? project.value.activeRevision;
    const wanted = wantedOf(project.value, revisionId, texts);
    if (!wanted.ok) return refuse(wanted.issues, output, file);
    const out = words.value.values.get('out');
    // better known before the work than after it
    const writable = out === undefined ? ok(null) : await checkOut(out);
    if (!writable.ok) return refuse(writable.issues, output);
    const { plan } = wanted.value;
    const fields = words.value.flags.has('solved') ? 'solved' : 'formula';
    const hear = progressTo(output, plan.candidates.length);
    const job = { project: project.value, revisionId, fields } as const;
    const designs = await sweepAll(job, plan.candidates, threadBeside(workerPath), hear);
    return handOut(wanted.value, designs, words.value, output);
  },
};
