import { CommanderError } from 'commander';
import type { Problem } from '../core/problem.ts';
import { printRefusal } from './output.ts';
import { program } from './program.ts';

/** What commands throw that a person can do something about. */
const problemOf = (thrown: unknown): Problem | undefined => {
  if (thrown instanceof CommanderError) {
    const bare = thrown.message.replace(/^error: /, '').replace(/\.$/, '');
    const detail = thrown.code === 'commander.help' ? 'the name of a command is missing' : bare;
    return { code: 'command-misused', params: { detail } };
  }
  if (!(thrown instanceof Error) || !('problem' in thrown)) return undefined;
  return thrown.problem as Problem;
};

try {
  await program.parseAsync();
} catch (thrown) {
  // Help and version were asked for and have been printed.
  const asked = thrown instanceof CommanderError && thrown.exitCode === 0;
  const problem = problemOf(thrown);
  if (problem === undefined) throw thrown;
  if (!asked) process.exitCode = printRefusal(problem);
}
