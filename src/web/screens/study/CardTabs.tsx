import type { Card } from '../../../core/card/card.ts';
import type { Study } from '../../../core/study/study.ts';
import { studyText as words } from '../../../words/texts.ts';

export interface CardTabsProps {
  readonly study: Study;
  readonly card: Card;
  readonly onChoose: (code: string) => void;
}

/** Which of the sheet's cards lies on the bench; nothing where there is only one. */
export const CardTabs = ({ study, card, onChoose }: CardTabsProps) => {
  if (study.cards.length < 2) return null;
  return (
    <div className="card-tabs" role="group" aria-label={words.cards}>
      {study.cards.map(({ code }) => (
        <button
          key={code}
          type="button"
          className="strip-way"
          aria-pressed={code === card.code}
          onClick={() => onChoose(code)}
        >
          {words.cardTab(code)}
        </button>
      ))}
    </div>
  );
};
