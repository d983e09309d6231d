import type { Card } from '../../../core/card/card.ts';
import type { Study } from '../../../core/study/study.ts';
import { couldBeStrip, stripsIn } from '../../../core/watch/findStrips.ts';
import { studyText as words } from '../../../words/texts.ts';
import { ActionLink } from '../../parts/action/Action.tsx';
import { Notice } from '../../parts/notice/Notice.tsx';
import { useKeptLike } from '../../state/queries.ts';
import { pageAt, pages } from '../../state/pages.ts';

export interface StripOfProps {
  readonly study: Study;
  readonly card: Card;
}

/** Where the card is a check strip of a setting in the book: what it says of that setting stands there, not here. */
export const StripOf = ({ study, card }: StripOfProps) => {
  const { data } = useKeptLike(study.id, couldBeStrip(card));
  const entry = data?.entries.find((each) =>
    stripsIn(study, each).some(({ code }) => code === card.code),
  );
  if (entry === undefined) return null;
  return (
    <Notice tone="say" title={words.stripOf(entry.setting)}>
      <p>{words.stripOfMore}</p>
      <div className="actions">
        <ActionLink href={`${pageAt(pages.entry, { id: entry.id })}#watch`}>
          {words.stripSays}
        </ActionLink>
      </div>
    </Notice>
  );
};
