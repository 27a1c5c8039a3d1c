/** Reads a command's words: the options it knows, the files and names it wants; anything else is an issue. */

import { fail, type Issue, ok, type Result } from '../../core/index.ts';

/** What a command accepts. */
export interface CommandShape {
  /** One line that shows how the command is typed. */
  readonly usage: string;
  /** Options that stand alone, without dashes. */
  readonly flags: readonly string[];
  /** Options followed by a value, without dashes. */
  readonly values: readonly string[];
  /** How many bare words it needs at least and at most. */
  readonly words: readonly [min: number, max: number];
}

/** A command's words, sorted. */
export interface Words {
  readonly bare: readonly string[];
  readonly flags: ReadonlySet<string>;
  readonly values: ReadonlyMap<string, string>;
}

/** Sorts the words of a command line; `--option=value` and `--option value` are the same. */
export function readWords(shape: CommandShape, given: readonly string[]): Result<Words> {
  const bare: string[] = [];
  const flags = new Set<string>();
  const values = new Map<string, string>();
  const issues: Issue[] = [];
  for (let i = 0; i < given.length; i++) {
    const word = given[i] ?? '';
    if (!word.startsWith('--')) {
      bare.push(word);
      continue;
    }
    const [name = '', ...rest] = word.slice(2).split('=');
    if (shape.flags.includes(name) && rest.length === 0) flags.add(name);
    else if (!shape.values.includes(name)) issues.push(unknownOption(shape, word));
    else {
      const value = rest.length > 0 ? rest.join('=') : given[++i];
      if (value === undefined || value === '') issues.push(valueMissing(shape, name));
      else values.set(name, value);
    }
  }
  if (bare.length < shape.words[0] || bare.length > shape.words[1]) issues.push(wordCount(shape, bare.length));
  return issues.length > 0 ? fail(...issues) : ok({ bare, flags, values });
}

const unknownOption = (shape: CommandShape, word: string): Issue => ({
  path: ['command line'],
  code: 'option-unknown',
  message: 'There is no such option here.',
  value: word,
  allowed: [...shape.flags, ...shape.values].map((name) => `--${name}`).join(', '),
  remedy: `Type: ${shape.usage}`,
});

const valueMissing = (shape: CommandShape, name: string): Issue => ({
  path: ['command line'],
  code: 'option-value',
  message: `--${name} needs a value after it.`,
  remedy: `Type: ${shape.usage}`,
});

const wordCount = (shape: CommandShape, count: number): Issue => ({
  path: ['command line'],
  code: 'word-count',
  message: 'The command needs other words than these.',
  value: `${count} without dashes`,
  allowed: shape.words[1] === Number.POSITIVE_INFINITY ? `${shape.words[0]} or more` : shape.words.join(' to '),
  remedy: `Type: ${shape.usage}`,
});
