/** Finds the headless command by its name, runs it, and turns whatever happens into an exit status. */

import type { Issue } from '../../core/index.ts';
import { type Command, type Output, refuse, type Status, status } from './command.ts';
import { asksForHelp, helpText, shownWord } from './options.ts';

/** Each command is loaded when it is asked for, so that one does not wait for the others' code. */
const commands: Readonly<Record<string, () => Promise<Command>>> = {
  checks: async () => (await import('./checks.ts')).checksCommand,
  predict: async () => (await import('./predict.ts')).predictCommand,
  compare: async () => (await import('./compare.ts')).compareCommand,
  export: async () => (await import('./export.ts')).exportCommand,
  reference: async () => (await import('./reference.ts')).referenceCommand,
  sweep: async () => (await import('./sweep.ts')).sweepCommand,
};

const streams: Output = {
  result: (text) => void process.stdout.write(`${text}\n`),
  problem: (text) => void process.stderr.write(`${text}\n`),
};

/**
 * Runs `words[0]` with the rest; answers with the exit status and never throws.
 * @param workerPath bundle of the thread that predicts, or null to work on this thread
 */
export async function main(
  words: readonly string[],
  output: Output = streams,
  workerPath: string | null = null,
): Promise<Status> {
  const [name = '', ...given] = words;
  const load = Object.hasOwn(commands, name) ? commands[name] : undefined;
  try {
    if (!load) return await withoutCommand(words, output);
    const command = await load();
    if (!asksForHelp(given)) return await command.run(given, output, workerPath);
    output.result(helpText(command.shape));
    return status.done;
  } catch (error) {
    output.problem(`Internal fault in ${name}: ${error instanceof Error ? (error.stack ?? error.message) : error}`);
    return status.fault;
  }
}

/** Every command's usage: asked for it is a result, else it follows what is wrong. */
async function withoutCommand(words: readonly string[], output: Output): Promise<Status> {
  const shapes = await Promise.all(Object.values(commands).map(async (load) => (await load()).shape));
  const usage = shapes.map(helpText).join('\n\n');
  if (asksForHelp(words)) {
    output.result(usage);
    return status.done;
  }
  const [name] = words;
  if (name !== undefined) return refuse([unknownCommand(name)], output);
  output.problem(usage);
  return status.badInput;
}

const unknownCommand = (name: string): Issue => ({
  path: ['command line'],
  code: 'command-unknown',
  message: 'There is no such command.',
  value: shownWord(name),
  allowed: Object.keys(commands).join(', '),
  remedy: 'Name one of them.',
});
