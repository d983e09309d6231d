import { byTestList, type ByTestList } from '../../core/machineTests.ts';
import type { Problem } from '../../core/problem.ts';

/** How many of each were in a file. */
export interface ImportCounts extends ByTestList<number> {
  readonly machines: number;
  readonly studies: number;
  readonly cards: number;
  readonly events: number;
  readonly tallies: number;
  readonly provenSettings: number;
}

export interface ImportedCounts {
  readonly added: ImportCounts;
  readonly alreadyHere: ImportCounts;
}

export interface Imported extends ImportedCounts {
  /** Materials that came in and are refused or asked about: nothing is advised on them. */
  readonly notAdvised: readonly Problem[];
}

export const noneImported: ImportCounts = {
  machines: 0,
  studies: 0,
  cards: 0,
  events: 0,
  tallies: 0,
  provenSettings: 0,
  ...byTestList(() => 0),
};

export const plus = (
  imported: ImportedCounts,
  what: keyof ImportCounts,
  isNew: boolean,
  count: number,
): ImportedCounts => {
  const side = isNew ? 'added' : 'alreadyHere';
  return { ...imported, [side]: { ...imported[side], [what]: imported[side][what] + count } };
};
