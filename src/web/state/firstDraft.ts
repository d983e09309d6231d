import type { Card } from '../../core/card/card.ts';
import type { Study } from '../../core/study/study.ts';
import { firstCard } from './firstCard.ts';
import { newCode } from './newId.ts';
import { commonPowerPct, commonStock, newStudy } from './newStudy.ts';

export interface FirstDraft {
  readonly study: Study;
  readonly card: Card;
  readonly powerPct: number;
}

/** The default ladder for a common stock: what the first screen shows before anyone has said anything. */
export const firstDraft = (): FirstDraft => {
  const bare = newStudy(commonStock);
  const card = firstCard(newCode());
  const study = { ...bare, ask: { powerPct: commonPowerPct }, cards: [card] };
  return { study, card, powerPct: commonPowerPct };
};
