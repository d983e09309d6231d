import type { Card } from '../../../core/card/card.ts';
import { cardText as words } from '../../../words/texts.ts';
import { cardTime } from '../../../core/card/cardTime.ts';
import type { Machine } from '../../../core/machine/machine.ts';

/** What the card costs: sheet, settings to type, time. */
export const CardFacts = ({
  card,
  machine,
}: {
  readonly card: Card;
  readonly machine: Machine;
}) => (
  <ul className="card-facts figure-text">
    <li>{words.cells(card.cells.length)}</li>
    <li>{words.types(card.rungs.length)}</li>
    <li>{words.uses(card.widthMm, card.heightMm)}</li>
    <li>{words.takes(cardTime(card, machine.motion).seconds)}</li>
  </ul>
);
