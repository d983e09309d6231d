import type { Card } from '../core/card/card.ts';
import { actsOfCard } from '../core/card/cardActs.ts';
import type { Problem } from '../core/problem.ts';
import { cautionLines } from '../words/cautionLines.ts';

/** The cautions that go with every file of a card, wherever there is room for words; what its material asks for first. */
export const cardCautions = (card: Card, ofMaterial: readonly Problem[]): readonly string[] =>
  cautionLines(actsOfCard(card), ofMaterial);
