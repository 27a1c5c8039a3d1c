/** What of a message may stand in the log: no path of a person's beyond the file's own name, and never a long text. */

import { homedir } from 'node:os';

/** Longest message that is written, characters. */
const longest = 2_000;
/** Lines of an error's trace that are kept. */
const traceLines = 12;

/** Last part of a path of either system. */
const lastPart = (path: string): string => path.split(/[\\/]+/).at(-1) || '';

/** Paths in quotes, which may hold blanks; then bare ones, of three shapes: address, drive or network, root. */
const quoted = /(["'`])((?:file:\/\/)?(?:[A-Za-z]:[\\/]|\\\\|\/)[^"'`\n]*)\1/g;
const bare = /(?:file:\/\/\/?|[A-Za-z]:[\\/]|\\\\|(?<![\w.:/-])\/)(?:[^\s"'`()<>:]+[\\/])*[^\s"'`()<>:\\/]*/g;

/** A text with every absolute path cut down to its last part, of one line, and of bounded length. */
export function withoutPaths(text: string, home: string = homedir()): string {
  const known = home.length > 1 ? text.replaceAll(home, '/~') : text;
  const cut = known
    .replace(quoted, (_all, mark: string, path: string) => `${mark}${lastPart(path)}${mark}`)
    .replace(bare, (path) => lastPart(path));
  const line = cut.replace(/\s*[\r\n]+\s*/g, ' | ').replace(/\p{Cc}+/gu, ' ');
  return line.length > longest ? `${line.slice(0, longest)} ...` : line;
}

/** The text of whatever was thrown or told. */
export function logText(told: unknown): string {
  if (!(told instanceof Error)) return withoutPaths(typeof told === 'string' ? told : String(told));
  const trace = (told.stack ?? `${told.name}: ${told.message}`).split('\n').slice(0, traceLines).join('\n');
  return withoutPaths(trace);
}
