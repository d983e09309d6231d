import type { Card } from '../card/card.ts';
import { firingProblem } from '../card/firingLimits.ts';
import type { FiringPart } from '../problems/firing.ts';
import type { Setting } from '../machine/setting.ts';
import type { Problem } from '../problem.ts';
import { acceptMaterial } from '../stock/acceptMaterial.ts';
import { believedForCard } from './believedForCard.ts';
import type { Study } from './study.ts';
import { toCutStudy } from './toCutStudy.ts';

/**
 * Why a card is not taken to the machine as things stand now, whatever was so when it was made: its sheet is of something
 * that is not cut, or a part of it goes beyond what machine, tube and sheet bear. undefined: nothing is against it. Files are
 * held to the same, and to what else stands in them.
 */
export const cardHeldBack = (study: Study, card: Card): Problem | undefined => {
  const accepted = acceptMaterial(study.stock);
  if (!accepted.ok) return accepted.problem;
  const { machine } = study;
  const limits = {
    machine,
    mayOverdrive: card.overdrive === true,
    ...(card.believed === undefined
      ? {}
      : { believed: believedForCard(toCutStudy(study), card, undefined) }),
  };
  const parts: readonly (readonly [FiringPart, Setting | undefined])[] = [
    ...card.rungs.map(({ setting }) => ['cell', setting] as const),
    ['marks', card.scoring],
    ['trusted', card.trusted],
  ];
  return parts
    .map(([part, setting]) => setting && firingProblem(part, setting, limits))
    .find((problem) => problem !== undefined);
};
