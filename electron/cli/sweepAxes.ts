/** Reads the axes of a sweep from a command line. */

import { fail, type Issue, ok, type Result, type SweepAxis } from '../../core/index.ts';

import { shownWord } from './options.ts';

/** Longest name of an input, characters. */
const longestInput = 200;

/** How an axis is typed. */
export const axisForm = 'PATH=FROM:TO:STEPS';

const issue = (value: string, message: string, allowed: string): Issue => ({
  path: ['--vary'],
  code: 'axis-form',
  message,
  value: shownWord(value),
  allowed,
  remedy: `Type it as --vary ${axisForm}, such as --vary process.screwSpeedRpm=5:20:16.`,
});

/** Takes every `--vary` with its value out of the words; one without a value stays, to be refused with the others. */
export function takeAxes(given: readonly string[]): {
  readonly texts: readonly string[];
  readonly rest: readonly string[];
} {
  const texts: string[] = [];
  const rest: string[] = [];
  for (let i = 0; i < given.length; i++) {
    const word = given[i] ?? '';
    const next = given[i + 1];
    if (word.startsWith('--vary=') && word.length > '--vary='.length) texts.push(word.slice('--vary='.length));
    else if (word === '--vary' && next !== undefined && !next.startsWith('--')) {
      texts.push(next);
      i++;
    } else rest.push(word);
  }
  return { texts, rest };
}

/** One axis; `:log` at its end asks for even ratios instead of even steps. */
export function readAxis(text: string): Result<SweepAxis> {
  const at = text.lastIndexOf('=');
  const parts = text.slice(at + 1).split(':');
  if (at < 1 || parts.length < 3 || parts.length > 4)
    return fail(issue(text, 'An input to vary is not typed in full.', `${axisForm} or ${axisForm}:log`));
  if (at > longestInput) return fail(issue(text, 'No input has so long a name.', `at most ${longestInput} characters`));
  const scale = parts[3] ?? 'linear';
  if (scale !== 'linear' && scale !== 'log')
    return fail(issue(text, 'There is no such way of stepping.', 'log or linear, or nothing for linear'));
  const bad = parts.slice(0, 3).find((part) => part.trim() === '' || !Number.isFinite(Number(part)));
  if (bad !== undefined)
    return fail(issue(text, `"${shownWord(bad)}" is not a number.`, 'numbers with a dot, in the unit of the file'));
  const [from = 0, to = 0, steps = 0] = parts.map(Number);
  return ok({ input: text.slice(0, at), from, to, steps, scale });
}
