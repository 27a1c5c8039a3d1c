/** Options of a hand-over module against its own list: defaults, texts of a command line, located refusals. */

import { fail, type Issue, ok, type Result } from '../result.ts';
import { formatNumber } from '../units.ts';
import type { HandoverModule, HandoverOption, HandoverValues } from './types.ts';

type Value = string | number | boolean;

/** What checking needs of a module; the rest of it may stay in a worker. */
export type OptionOwner = Pick<HandoverModule, 'id' | 'label' | 'options'>;

/** The value each option starts with. */
export const startValues = (module: OptionOwner): HandoverValues =>
  Object.fromEntries(module.options.map(({ id, start }) => [id, start]));

/** What an option allows, in words with its unit. */
export function allowedOf(option: HandoverOption): string {
  switch (option.kind) {
    case 'choice':
      return option.choices.map(({ id }) => id).join(', ');
    case 'number': {
      const range = `${formatNumber(option.least, 9)} to ${formatNumber(option.most, 9)}`;
      return option.unit === '' ? range : `${range} ${option.unit}`;
    }
    case 'text':
      return `up to ${option.longest} characters`;
    case 'flag':
      return 'yes or no';
  }
}

const refused = (module: OptionOwner, option: HandoverOption, value: unknown, message: string): Issue => ({
  path: [module.id, option.id],
  code: 'handover-option',
  message,
  value: String(value).slice(0, 60),
  allowed: allowedOf(option),
  remedy: `Give ${option.label.toLowerCase()} within that.`,
});

const unknownOption = (module: OptionOwner, id: string): Issue => ({
  path: [module.id, id],
  code: 'handover-option-unknown',
  message: `${module.label} has no such option.`,
  value: id.slice(0, 60),
  allowed: module.options.map((option) => option.id).join(', ') || 'none',
  remedy: 'Leave it out, or name one of these.',
});

/** Why a value is not one of the option's, or null. */
function faultOf(option: HandoverOption, value: unknown): string | null {
  switch (option.kind) {
    case 'choice':
      return option.choices.some(({ id }) => id === value) ? null : 'This is none of the choices.';
    case 'number':
      if (typeof value !== 'number' || !Number.isFinite(value)) return 'This is no number.';
      return value >= option.least && value <= option.most ? null : 'This is outside the range.';
    case 'text':
      if (typeof value !== 'string') return 'This is no text.';
      return value.length <= option.longest ? null : 'This is too long.';
    case 'flag':
      return typeof value === 'boolean' ? null : 'This is neither yes nor no.';
  }
}

/**
 * Values checked against a module's options; what is not given starts as the option says.
 * @param given values by option id
 * @returns every option's value, or an issue for each that is unknown or outside what is allowed
 */
export function checkValues(module: OptionOwner, given: Readonly<Record<string, unknown>>): Result<HandoverValues> {
  const known = new Set(module.options.map(({ id }) => id));
  const issues = Object.keys(given)
    .filter((id) => !known.has(id))
    .map((id) => unknownOption(module, id));
  const values: Record<string, Value> = {};
  for (const option of module.options) {
    const value = Object.hasOwn(given, option.id) ? given[option.id] : option.start;
    const fault = faultOf(option, value);
    if (fault === null) values[option.id] = value as Value;
    else issues.push(refused(module, option, value, fault));
  }
  return issues.length > 0 ? fail(...issues) : ok(values);
}

const yes = /^(yes|true|on|1)$/i;
const no = /^(no|false|off|0)$/i;

/** A typed text as the kind of value that the option takes; texts that are neither stay texts, to be refused by name. */
function typedValue(option: HandoverOption, text: string): Value {
  if (option.kind === 'number') return /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(text) ? Number(text) : text;
  if (option.kind !== 'flag') return text;
  if (yes.test(text)) return true;
  return no.test(text) ? false : text;
}

const noPair = (module: OptionOwner, word: string): Issue => ({
  path: [module.id],
  code: 'handover-option-form',
  message: 'An option is written as name=value.',
  value: word.slice(0, 60),
  allowed: module.options.map(({ id, start }) => `${id}=${start}`).join(', ') || 'none',
  remedy: 'Write the name, an equals sign and the value.',
});

/** Options typed as `name=value`, checked as `checkValues` does; an option named twice keeps its last value. */
export function readOptionWords(module: OptionOwner, words: readonly string[]): Result<HandoverValues> {
  // without a prototype: a name such as __proto__ is a name like any other, to be refused
  const given: Record<string, unknown> = Object.create(null);
  const issues: Issue[] = [];
  for (const word of words) {
    const at = word.indexOf('=');
    if (at < 1) issues.push(noPair(module, word));
    else {
      const id = word.slice(0, at).trim();
      const text = word.slice(at + 1).trim();
      const option = module.options.find((each) => each.id === id);
      given[id] = option ? typedValue(option, text) : text;
    }
  }
  const checked = checkValues(module, given);
  if (issues.length === 0) return checked;
  return fail(...issues, ...(checked.ok ? [] : checked.issues));
}

/** A checked number option. */
export const numberOf = (values: HandoverValues, id: string): number => Number(values[id]);
/** A checked choice option; the caller names the choices' ids. */
export const choiceOf = <T extends string>(values: HandoverValues, id: string): T => String(values[id]) as T;
/** A checked yes-or-no option. */
export const flagOf = (values: HandoverValues, id: string): boolean => values[id] === true;
/** A checked text option. */
export const textOf = (values: HandoverValues, id: string): string => String(values[id] ?? '');
