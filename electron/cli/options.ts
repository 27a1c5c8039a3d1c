/** Reads a command's words: the options it knows, the files and names it wants; anything else is an issue. */

import { fail, type Issue, ok, type Result } from '../../core/index.ts';

/** What a command accepts. */
export interface CommandShape {
  /** One line that shows how the command is typed. */
  readonly usage: string;
  /** What it does and what its options mean, one line each. */
  readonly about: readonly string[];
  /** Options that stand alone, without dashes. */
  readonly flags: readonly string[];
  /** Options followed by a value, without dashes. */
  readonly values: readonly string[];
  /** Options followed by a value that may be given more than once. */
  readonly many?: readonly string[];
  /** How many bare words it needs at least and at most. */
  readonly words: readonly [min: number, max: number];
}

/** A word as an issue shows it. */
export const shownWord = (word: string): string => (word.length > 80 ? `${word.slice(0, 77)}…` : word);

/** A command's words, sorted. */
export interface Words {
  readonly bare: readonly string[];
  readonly flags: ReadonlySet<string>;
  readonly values: ReadonlyMap<string, string>;
  readonly many: ReadonlyMap<string, readonly string[]>;
}

/** Sorts the words of a command line; `--option=value` and `--option value` are the same. */
export function readWords(shape: CommandShape, given: readonly string[]): Result<Words> {
  const bare: string[] = [];
  const flags = new Set<string>();
  const values = new Map<string, string>();
  const many = new Map<string, string[]>();
  const repeatable = shape.many ?? [];
  const issues: Issue[] = [];
  for (let i = 0; i < given.length; i++) {
    const word = given[i] ?? '';
    if (!word.startsWith('-') || word === '-') {
      bare.push(word);
      continue;
    }
    const [name = '', ...rest] = word.startsWith('--') ? word.slice(2).split('=') : [];
    if (shape.flags.includes(name) && rest.length === 0) flags.add(name);
    else if (!shape.values.includes(name) && !repeatable.includes(name)) issues.push(unknownOption(shape, word));
    else {
      const value = rest.length > 0 ? rest.join('=') : given[++i];
      if (value === undefined || value === '') issues.push(valueMissing(shape, name));
      else if (repeatable.includes(name)) many.set(name, [...(many.get(name) ?? []), value]);
      else if (values.has(name)) issues.push(valueRepeated(shape, name, value));
      else values.set(name, value);
    }
  }
  if (bare.length < shape.words[0] || bare.length > shape.words[1]) issues.push(wordCount(shape, bare.length));
  return issues.length > 0 ? fail(...issues) : ok({ bare, flags, values, many });
}

const unknownOption = (shape: CommandShape, word: string): Issue => ({
  path: ['command line'],
  code: 'option-unknown',
  message: 'There is no such option here.',
  value: shownWord(word),
  allowed: [...shape.flags, ...shape.values, ...(shape.many ?? []), 'help'].map((name) => `--${name}`).join(', '),
  remedy: `Type: ${shape.usage}`,
});

const valueMissing = (shape: CommandShape, name: string): Issue => ({
  path: ['command line'],
  code: 'option-value',
  message: `--${name} needs a value after it.`,
  remedy: `Type: ${shape.usage}`,
});

const valueRepeated = (shape: CommandShape, name: string, value: string): Issue => ({
  path: ['command line'],
  code: 'option-repeated',
  message: `--${name} is given more than once.`,
  value: shownWord(value),
  allowed: 'once',
  remedy: `Type: ${shape.usage}`,
});

/** Whether the words ask for help rather than for work. */
export const asksForHelp = (given: readonly string[]): boolean =>
  given.some((word) => word === '-h' || word === '--help');

/** Usage and meaning of a command, as lines. */
export const helpText = ({ usage, about }: CommandShape): string => [`Usage: ${usage}`, '', ...about].join('\n');

const countText = ([least, most]: CommandShape['words']): string => {
  if (most === Number.POSITIVE_INFINITY) return `${least} or more`;
  return least === most ? `exactly ${least}` : `${least} to ${most}`;
};

const wordCount = (shape: CommandShape, count: number): Issue => ({
  path: ['command line'],
  code: 'word-count',
  message: 'The command needs other words than these.',
  value: `${count} without dashes`,
  allowed: countText(shape.words),
  remedy: `Type: ${shape.usage}`,
});
