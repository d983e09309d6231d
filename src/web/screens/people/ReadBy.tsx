import type { Card } from '../../../core/card/card.ts';
import { readersOf } from '../../../core/reading/readersOf.ts';
import type { Study } from '../../../core/study/study.ts';
import { peopleText as words } from '../../../words/texts.ts';
import { More } from '../../parts/more/More.tsx';

export interface ReadByProps {
  readonly study: Study;
  readonly card: Card;
}

/** Who read the card, for whoever asks; nothing where nobody gave a name. */
export const ReadBy = ({ study, card }: ReadByProps) => {
  const readers = readersOf(study.events.filter(({ cardCode }) => cardCode === card.code));
  if (readers.every(({ by }) => by === undefined)) return null;
  return (
    <More title={words.readBy}>
      <ul>
        {readers.map(({ by, shapes, lastAt }) => (
          <li key={by ?? ''}>{words.reader(by, shapes, lastAt)}</li>
        ))}
      </ul>
    </More>
  );
};
