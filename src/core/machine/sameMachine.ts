import type { Machine } from './machine.ts';

type Named = Pick<Machine, 'name'>;

/**
 * Whether two descriptions are of one machine. Machines are told apart by the names that the workshop gives them, since
 * everything else about them may be read again and better. A sheet from before the machine had a name is of the named one
 * as long as the workshop has named no other. A tube that was changed makes another machine: it wants a name of its own.
 * `all`: every description that the workshop has.
 */
export const sameMachine = (one: Named, other: Named, all: readonly Named[]): boolean => {
  const [a, b] = [nameOf(one), nameOf(other)];
  if (a !== '' && b !== '') return a === b;
  const names = new Set([...all, one, other].map(nameOf).filter((name) => name !== ''));
  return a === b || names.size === 1;
};

const nameOf = ({ name = '' }: Named): string => name.trim().toLowerCase();
