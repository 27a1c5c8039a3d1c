/** Errors as data: every check of outside input answers with a value or with all its issues at once. */

/** One reason why an input is refused. It stops a run; a doubtful but valid design gets a finding instead. */
export interface Issue {
  /** Where: keys and indexes from the root of the checked document. */
  readonly path: readonly (string | number)[];
  /** Stable machine-readable name of the rule, kebab-case. */
  readonly code: string;
  /** What was found, in words a maker reads. */
  readonly message: string;
  /** The offending value, shortened for display; absent where nothing was there. */
  readonly value?: string;
  /** The allowed range or choices, in words with units. */
  readonly allowed?: string;
  /** What to do about it. */
  readonly remedy: string;
}

/** A value, or every issue that prevented it. */
export type Result<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly issues: readonly Issue[] };

/** Wraps a value as a successful result. */
export const ok = <T>(value: T): Result<T> => ({ ok: true, value });

/** Wraps issues as a failed result. */
export const fail = (...issues: readonly Issue[]): Result<never> => ({ ok: false, issues });

/** `barrel.zones[1].setTempC` from path parts. */
export function pathText(path: readonly (string | number)[]): string {
  return path.reduce<string>(
    (text, part) => (typeof part === 'number' ? `${text}[${part}]` : text ? `${text}.${part}` : part),
    '',
  );
}

/** Message, value, allowed range and remedy, for where a place in the file says nothing to the reader. */
export function issueReason({ message, value, allowed, remedy }: Issue): string {
  const found = value === undefined ? '' : ` Found: ${value}.`;
  const range = allowed === undefined ? '' : ` Allowed: ${allowed}.`;
  return `${message}${found}${range} ${remedy}`;
}

/** One line for a log or a terminal: place, message, value, allowed range, remedy. */
export const issueText = (issue: Issue): string => `${pathText(issue.path) || '(whole file)'}: ${issueReason(issue)}`;

/** Compile-time proof that a union is exhausted. */
export function assertNever(value: never): never {
  throw new Error(`Unhandled case: ${String(value)}`);
}
