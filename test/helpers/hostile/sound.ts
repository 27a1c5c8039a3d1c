/** What must hold of every answer to hostile input. Each check throws with what is wrong. */

import { type Issue, issueText, type Result } from '../../../core/result.ts';

/** What became of a case. */
export type Outcome = 'refused' | 'accepted';

const fault = (words: string): never => {
  throw new Error(words);
};

const watched: readonly object[] = [Object, Array, String, Number, Map, Function, Promise].flatMap((maker) => [
  maker.prototype as object,
]);
const before = watched.map((each) => Reflect.ownKeys(each).length);

/** No prototype that all objects share has got a key more. */
export function checkPrototypes(): void {
  watched.forEach((each, i) => {
    if (Reflect.ownKeys(each).length !== before[i])
      fault(`a shared prototype was changed: ${String(Reflect.ownKeys(each).at(-1))}`);
  });
  if (({} as { polluted?: unknown }).polluted !== undefined) fault('Object.prototype was polluted');
}

/** Plain data with plain prototypes and none of the keys that reach into them. */
export function checkPlain(value: unknown): void {
  if (typeof value !== 'object' || value === null) return;
  const own = Object.getPrototypeOf(value) as unknown;
  if (own !== Object.prototype && own !== Array.prototype) fault('parsed data carry a foreign prototype');
  for (const key of Object.keys(value)) {
    if (key === '__proto__' || key === 'constructor' || key === 'prototype') fault(`the key ${key} was let in`);
    checkPlain((value as Record<string, unknown>)[key]);
  }
}

const short = (text: unknown, most: number): boolean => typeof text === 'string' && text.length <= most;

function checkIssue(issue: Issue): void {
  const { path, code, message, value, allowed, remedy } = issue;
  const told = () => JSON.stringify(issue).slice(0, 400);
  if (!Array.isArray(path) || path.some((part) => typeof part !== 'string' && typeof part !== 'number'))
    fault(`no place: ${told()}`);
  if (!/^[a-z][a-z0-9-]*$/.test(code)) fault(`no code: ${told()}`);
  // what was typed stands in quotes and may be anything
  const own = message.replace(/".*"/s, '""');
  if (!short(message, 1200) || message.length < 8 || /\b(?:undefined|NaN)\b|\[object/.test(own))
    fault(`no message: ${told()}`);
  if (!short(remedy, 400) || remedy.length < 8) fault(`no remedy: ${told()}`);
  if (value !== undefined && !short(value, 400)) fault(`a value too long to show: ${code} ${value.length}`);
  if (allowed !== undefined && (!short(allowed, 4000) || allowed === '')) fault(`no allowed range: ${told()}`);
  issueText(issue);
}

/** Issues that a person can act on, and not so many that they fill the memory. */
export function checkIssues(issues: readonly Issue[]): void {
  if (issues.length === 0) fault('refused without a reason');
  if (issues.length > 3000) fault(`${issues.length} issues`);
  for (const issue of issues) checkIssue(issue);
}

/** The value of a good result; null, its issues being sound, where it was refused. */
export function soundly<T>(result: Result<T>): T | null {
  if (result.ok) return result.value;
  checkIssues(result.issues);
  return null;
}
