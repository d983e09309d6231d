import type { Setting } from '../machine/setting.ts';
import type { Problem } from '../problem.ts';
import type { CardRequest } from './cardRequest.ts';
import { firingProblem, type FiringLimits } from './firingLimits.ts';

/** What a card's parts are held to. */
export const limitsOf = ({ machine, believed, overdrive }: CardRequest): FiringLimits => ({
  machine,
  believed,
  mayOverdrive: overdrive === true,
});

/** The first part of a card that would fire beyond a limit: a cell, the marks, or window and outline. */
export const holdToLimits = (
  request: CardRequest,
  { cells, marks }: { readonly cells: readonly Setting[]; readonly marks: Setting },
): Problem | undefined => {
  const limits = limitsOf(request);
  const problems = [
    ...cells.map((setting) => firingProblem('cell', setting, limits)),
    firingProblem('marks', marks, limits),
    ...(request.trusted === undefined ? [] : [firingProblem('trusted', request.trusted, limits)]),
  ];
  return problems.find((problem) => problem !== undefined);
};
