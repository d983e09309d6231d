import type { ProblemOf } from '../problem.ts';
import type { CardCode } from '../problems/card.ts';

/** Why a card cannot be designed, or what is to be said of one that was. */
export type CardProblem = ProblemOf<CardCode>;
