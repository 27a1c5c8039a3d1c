/** `export FILE --to ID --out PATH [--revision ID] [--option name=value] [--list]`: files to hand over. */

import {
  allowedOf,
  createFieldCache,
  dayText,
  fail,
  type HandoverFile,
  type HandoverModule,
  handoverModules,
  handoverSource,
  type Issue,
  ok,
  type Project,
  predict,
  type Result,
  readOptionWords,
  runHandover,
} from '../../core/index.ts';
import { checkOut, type WriteOne, writeOut } from '../services/writeOut.ts';
import { type Command, type Output, refuse, type Status, status, tellUnknown } from './command.ts';
import { nodeTools } from './handoverTools.ts';
import { readWords, type Words } from './options.ts';
import { readProject } from './readDesign.ts';

/** One module with its options, as lines. */
function described({ id, label, help, options, several }: HandoverModule): string[] {
  return [
    `${id}  ${label}${several ? ' (of several revisions too)' : ''}`,
    `    ${help}`,
    ...options.flatMap((option) => [
      `    --option ${option.id}=${option.start}  ${option.label}; ${allowedOf(option)}`,
      `        ${option.help}`,
    ]),
  ];
}

const unknownKind = (id: string): Issue => ({
  path: ['command line', 'to'],
  code: 'handover-unknown',
  message: id === '' ? 'The kind of file is not named.' : 'There is no such kind of file.',
  ...(id === '' ? {} : { value: id }),
  allowed: handoverModules.map((module) => module.id).join(', '),
  remedy: 'Name one of them after --to; --list tells what they are.',
});

const outMissing: Issue = {
  path: ['command line', 'out'],
  code: 'option-value',
  message: 'The place to write to is not named.',
  remedy: 'Name a file or a folder after --out.',
};

/** What the words ask for, checked as far as that goes without the project. */
interface Asked {
  readonly module: HandoverModule;
  readonly out: string;
  readonly values: Readonly<Record<string, unknown>>;
}

function askedOf({ values, many }: Words): Result<Asked> {
  const id = values.get('to') ?? '';
  const module = handoverModules.find((each) => each.id === id);
  const out = values.get('out');
  const issues = [...(module ? [] : [unknownKind(id)]), ...(out === undefined ? [outMissing] : [])];
  if (!module || out === undefined) return fail(...issues);
  const read = readOptionWords(module, many.get('option') ?? []);
  return read.ok ? ok({ module, out, values: read.value }) : read;
}

/** The revisions named, separated by commas; without any the active one. */
function revisionsOf(project: Project, named: string | undefined): readonly string[] {
  return named === undefined ? [project.activeRevision] : named.split(',').map((id) => id.trim());
}

async function filesOf(
  { module, values }: Asked,
  project: Project,
  named: string | undefined,
): Promise<Result<readonly HandoverFile[]>> {
  const cache = createFieldCache();
  const date = dayText(new Date());
  const source = await handoverSource(module, project, revisionsOf(project, named), date, (design, fields, tell) =>
    predict(design, { fields, warmUp: true }, tell, cache),
  );
  return source.ok ? runHandover(module, source.value, values, nodeTools()) : source;
}

const factLine = ({ label, text }: HandoverFile['facts'][number]): string => `  ${label}: ${text}`;

/** What was written, its facts and what to mind; what holds for every file is told once, below them. */
function report(paths: readonly string[], files: readonly HandoverFile[], output: Output): void {
  const lines = files.map(({ facts }) => facts.map(factLine));
  const common = files.length > 1 ? (lines[0] ?? []).filter((line) => lines.every((own) => own.includes(line))) : [];
  files.forEach((file, i) => {
    output.result(paths[i] ?? file.name);
    for (const line of lines[i] ?? []) if (!common.includes(line)) output.result(line);
  });
  for (const line of common) output.result(line);
  for (const caution of new Set(files.flatMap(({ cautions = [] }) => cautions))) output.result(`  Mind: ${caution}`);
}

/** Writes, and answers with status 1 where the disk refuses: the input was good. */
async function finish(
  out: string,
  files: readonly HandoverFile[],
  output: Output,
  writeOne?: WriteOne,
): Promise<Status> {
  const written = await writeOut(out, files, writeOne);
  if (written.ok) {
    report(written.value, files, output);
    return status.done;
  }
  refuse(written.issues, output);
  return status.fault;
}

/** The command, over a way to write one file. */
export const exportCommandOver = (writeOne?: WriteOne): Command => ({
  shape: {
    usage: 'npm run -s export -- FILE --to ID --out PATH [--revision ID[,ID]] [--option name=value] [--list]',
    about: [
      'Writes files to hand over: bodies, drawings, tables, numbers for the controller.',
      '  --to ID        kind of file; --list tells all of them with their options',
      '  --out PATH     file to write; a folder (or a path that ends in /) takes the files by their own names',
      '  --revision ID  the revision; without it the active one; several with commas where the kind compares them',
      '  --option name=value  a choice of that kind of file; may be given more than once',
    ],
    flags: ['list'],
    values: ['to', 'out', 'revision'],
    many: ['option'],
    words: [0, 1],
  },
  async run(given, output) {
    const words = readWords(this.shape, given);
    if (!words.ok) return refuse(words.issues, output);
    if (words.value.flags.has('list')) {
      output.result(handoverModules.flatMap(described).join('\n'));
      return status.done;
    }
    const [file] = words.value.bare;
    const asked = askedOf(words.value);
    if (file === undefined || !asked.ok)
      return refuse([...(file === undefined ? [fileMissing] : []), ...(asked.ok ? [] : asked.issues)], output);
    const project = await readProject(file);
    if (!project.ok) return refuse(project.issues, output, file);
    tellUnknown(project.value, output, file);
    const place = await checkOut(asked.value.out);
    if (!place.ok) {
      refuse(place.issues, output);
      return status.fault;
    }
    const files = await filesOf(asked.value, project.value, words.value.values.get('revision'));
    if (!files.ok) return refuse(files.issues, output, file);
    return finish(asked.value.out, files.value, output, writeOne);
  },
});

const fileMissing: Issue = {
  path: ['command line'],
  code: 'word-count',
  message: 'The project file is not named.',
  remedy: 'Name it first.',
};

/** The command. */
export const exportCommand = exportCommandOver();
