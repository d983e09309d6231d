import type { Card } from '../../../core/card/card.ts';
import { sameMaterialAs } from '../../../core/stock/sameMaterial.ts';
import type { Study } from '../../../core/study/study.ts';
import { stripsIn } from '../../../core/watch/findStrips.ts';
import { studyText as words } from '../../../words/en/screens/study.ts';
import { ActionLink } from '../../parts/action/Action.tsx';
import { Notice } from '../../parts/notice/Notice.tsx';
import { useBook } from '../../state/queries.ts';

export interface StripOfProps {
  readonly study: Study;
  readonly card: Card;
}

/** Where the card is a check strip of a setting in the book: what it says of that setting stands there, not here. */
export const StripOf = ({ study, card }: StripOfProps) => {
  const { data } = useBook('');
  const isOfThis = sameMaterialAs(study.stock.material);
  const book = data?.entries.map(({ entry: kept }) => kept) ?? [];
  const entry = book.find(
    (each) =>
      isOfThis(each.holdsFor.material) &&
      stripsIn(study, each).some(({ code }) => code === card.code),
  );
  if (entry === undefined) return null;
  return (
    <Notice tone="say" title={words.stripOf(entry.setting)}>
      <p>{words.stripOfMore}</p>
      <div className="actions">
        <ActionLink href={`/book/${entry.id}#watch`}>{words.stripSays}</ActionLink>
      </div>
    </Notice>
  );
};
