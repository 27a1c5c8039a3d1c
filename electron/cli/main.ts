/** Finds the headless command by its name, runs it, and turns whatever happens into an exit status. */

import type { Issue } from '../../core/index.ts';
import { type Command, type Output, refuse, type Status, status } from './command.ts';

/** Each command is loaded when it is asked for, so that one does not wait for the others' code. */
const commands: Readonly<Record<string, () => Promise<Command>>> = {
  predict: async () => (await import('./predict.ts')).predictCommand,
  compare: async () => (await import('./compare.ts')).compareCommand,
  reference: async () => (await import('./reference.ts')).referenceCommand,
};

const streams: Output = {
  result: (text) => void process.stdout.write(`${text}\n`),
  problem: (text) => void process.stderr.write(`${text}\n`),
};

/** Runs `words[0]` with the rest; answers with the exit status and never throws. */
export async function main(words: readonly string[], output: Output = streams): Promise<Status> {
  const [name = '', ...given] = words;
  const load = Object.hasOwn(commands, name) ? commands[name] : undefined;
  if (!load) return refuse([unknownCommand(name)], output);
  try {
    return await (await load()).run(given, output);
  } catch (error) {
    output.problem(`Internal fault in ${name}: ${error instanceof Error ? (error.stack ?? error.message) : error}`);
    return status.fault;
  }
}

const unknownCommand = (name: string): Issue => ({
  path: ['command line'],
  code: 'command-unknown',
  message: 'There is no such command.',
  value: name,
  allowed: Object.keys(commands).join(', '),
  remedy: 'Name one of them.',
});
