/** `checks [--json] [--stage NAME] [--quick]`: holds computed numbers against those of the outside world. */

import { type CheckResult, checkCounts, checkStages, checks, type Issue, runCheck } from '../../core/index.ts';
import { checksTable, strain, worstChecks } from './checksTable.ts';
import { type Command, type Output, refuse, status } from './command.ts';
import { readWords, shownWord } from './options.ts';

/** The command. Exit status 3 where a number misses its limit. */
export const checksCommand: Command = {
  shape: {
    usage: 'npm run -s checks -- [--json] [--stage NAME] [--quick]',
    about: [
      'Holds computed numbers against standards, handbooks, worked examples and independent solvers;',
      'exit status 3 where one misses its limit.',
      '  --json        machine-readable',
      `  --stage NAME  only one stage: ${checkStages.join(', ')}`,
      '  --quick       without those that take more than a second each',
    ],
    flags: ['json', 'quick'],
    values: ['stage'],
    words: [0, 0],
  },
  async run(given, output) {
    const words = readWords(this.shape, given);
    if (!words.ok) return refuse(words.issues, output);
    const { flags, values } = words.value;
    const stage = values.get('stage');
    if (stage !== undefined && !checkStages.some((name) => name === stage)) return refuse([noStage(stage)], output);
    const asked = checks.filter(
      (check) => (stage === undefined || check.stage === stage) && !(flags.has('quick') && check.slow),
    );
    const results = ran(asked, output);
    output.result(flags.has('json') ? json(results) : checksTable(results));
    return results.length > 0 && results.every(({ pass }) => pass) ? status.done : status.checksFailed;
  },
};

/** One after the other; a slow one is announced before it starts. */
const ran = (asked: typeof checks, output: Output): readonly CheckResult[] =>
  asked.map((check, i) => {
    if (check.slow) output.problem(`${i + 1} of ${asked.length}: ${check.id}`);
    return runCheck(check);
  });

function json(results: readonly CheckResult[]): string {
  const worst = worstChecks(results).map((result) => {
    const ratio = strain(result);
    return { id: result.id, errorOverLimit: Number.isFinite(ratio) ? ratio : null };
  });
  const told = results.map(({ pass, ...result }) => ({ ...result, status: pass ? 'pass' : 'fail' }));
  return JSON.stringify({ checks: told, ...checkCounts(results), worst }, null, 2);
}

const noStage = (value: string): Issue => ({
  path: ['command line', '--stage'],
  code: 'check-stage',
  message: 'There is no such stage.',
  value: shownWord(value),
  allowed: checkStages.join(', '),
  remedy: 'Name one of them, or leave the option out.',
});
