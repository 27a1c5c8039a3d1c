/** `reference FILE... [--json]`: solves every entry of reference files with our own solvers and compares. */

import { fail, type Issue, ok, type Result, readReference as readReferenceCases } from '../../core/index.ts';
import { readTextFile } from '../services/textFile.ts';
import { type Command, type Output, refuse, type Status, status } from './command.ts';
import { readWords } from './options.ts';
import { referenceSolvers } from './referenceSolvers.ts';
import { referenceTable, type SolvedEntry, worstRows } from './referenceTable.ts';

interface ReferenceFile {
  readonly path: string;
  readonly kind: string;
  readonly entries: readonly unknown[];
}

/** The command. Exit status 3 where a quantity misses its limit. */
export const referenceCommand: Command = {
  shape: {
    usage: 'npm run -s reference -- FILE... [--json]',
    about: [
      'Solves every entry of reference files and compares; exit status 3 where a quantity misses its limit.',
      '  --json  machine-readable',
    ],
    flags: ['json'],
    values: [],
    words: [1, Number.POSITIVE_INFINITY],
  },
  async run(given, output) {
    const words = readWords(this.shape, given);
    if (!words.ok) return refuse(words.issues, output);
    const read = await Promise.all(words.value.bare.map(readReference));
    const issues = read.flatMap((file) => (file.ok ? [] : file.issues));
    if (issues.length > 0) return refuse(issues, output);
    const solved = read.flatMap((file) => (file.ok ? file.value.entries.map((_, i) => solveEntry(file.value, i)) : []));
    const unread = solved.flatMap((entry) => (entry.ok ? [] : entry.issues));
    if (unread.length > 0) return refuse(unread, output);
    return report(
      solved.flatMap((entry) => (entry.ok ? [entry.value] : [])),
      words.value.flags.has('json'),
      output,
    );
  },
};

function report(solved: readonly SolvedEntry[], json: boolean, output: Output): Status {
  const rows = solved.flatMap((entry) => entry.rows);
  const failed = rows.filter((row) => !row.pass).length;
  const summary = { passed: rows.length - failed, failed, worst: worstRows(solved) };
  output.result(json ? JSON.stringify({ entries: solved, ...summary }, null, 2) : referenceTable(solved));
  return failed === 0 && rows.length > 0 ? status.done : status.checksFailed;
}

/** What the solvers' readers say of an entry that lacks something; any other TypeError is a fault of ours. */
const lack = /is not a number$|is not an object$|^unknown material model/;

/** Solves one entry. */
function solveEntry({ path, kind, entries }: ReferenceFile, index: number): Result<SolvedEntry> {
  try {
    return ok({ file: path, kind, index, rows: referenceSolvers[kind]?.(entries[index]) ?? [] });
  } catch (error) {
    if (!(error instanceof TypeError && lack.test(error.message))) throw error;
    return fail({ ...notReference(path, error.message), path: [path, 'entries', index] });
  }
}

async function readReference(path: string): Promise<Result<ReferenceFile>> {
  const text = await readTextFile(path);
  if (!text.ok) return text;
  const cases = readReferenceCases(text.value);
  return cases.ok
    ? ok({ path, ...cases.value })
    : fail(...cases.issues.map((issue) => ({ ...issue, path: [path, ...issue.path] })));
}

const notReference = (path: string, value: string): Issue => ({
  path: [path],
  code: 'reference-file',
  message: 'This is no file of reference cases.',
  value,
  allowed: `an object with case (${Object.keys(referenceSolvers).join(', ')}), count and entries`,
  remedy: 'Name a file in that format.',
});
