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

/** One line for a log or a terminal: place, message, value, allowed range, remedy. */
export function issueText(issue: Issue): string {
  const place = pathText(issue.path) || '(whole file)';
  const value = issue.value === undefined ? '' : ` Found: ${issue.value}.`;
  const allowed = issue.allowed === undefined ? '' : ` Allowed: ${issue.allowed}.`;
  return `${place}: ${issue.message}${value}${allowed} ${issue.remedy}`;
}

/** Compile-time proof that a union is exhausted. */
export function assertNever(value: never): never {
  throw new Error(`Unhandled case: ${String(value)}`);
}
