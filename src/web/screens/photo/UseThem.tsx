import { useState } from 'react';
import { useLocation } from 'wouter';
import { photoText as words } from '../../../words/texts.ts';
import { Action, ActionLink } from '../../parts/action/Action.tsx';
import { Notice } from '../../parts/notice/Notice.tsx';
import { TickField } from '../../parts/quantity/TickField.tsx';
import { whyInWords, type CallProblem } from '../../state/call.ts';
import { useKeepPhotos, type CardOfPhotos } from '../../state/cardPhotos.ts';
import { pageAt, pages } from '../../state/pages.ts';
import type { PhotoQuestion } from '../../worker/photoQuestion.ts';
import type { CellToUse } from './cellsToUse.ts';

export interface UseThemProps {
  readonly cells: readonly CellToUse[];
  readonly card: CardOfPhotos;
  readonly photos: Pick<PhotoQuestion, 'front' | 'back'>;
  /** Says the readings of the card. */
  readonly onUse: () => void;
}

/** Says the readings, which need no server for that; then has the photographs kept, which do. */
export const UseThem = ({ cells, card, photos, onUse }: UseThemProps) => {
  const [, goTo] = useLocation();
  const { keep } = useKeepPhotos(card);
  const [isWanted, setIsWanted] = useState(true);
  const [keeping, setKeeping] = useState<'not' | 'at' | CallProblem>('not');
  const left = cells.filter(({ grade }) => grade === undefined).length;
  const toCard = pageAt(pages.card, card);
  const keepThem = async (): Promise<void> => {
    setKeeping('at');
    const front = await keep('front', photos.front);
    const both = front.ok && photos.back !== undefined ? await keep('back', photos.back) : front;
    if (both.ok) goTo(toCard);
    else setKeeping(both.why);
  };
  if (keeping === 'at') return <p>{words.keeping}</p>;
  if (keeping !== 'not') {
    const { message, remedy } = whyInWords(keeping);
    return (
      <Notice tone="stop" title={words.notKept}>
        <p>
          {message} {remedy}
        </p>
        <div className="actions">
          <Action kind="strong" onPress={() => void keepThem()}>
            {words.keepAgain}
          </Action>
          <ActionLink href={toCard}>{words.without}</ActionLink>
        </div>
      </Notice>
    );
  }
  return (
    <>
      <TickField
        label={words.keep}
        hint={words.keepMore}
        checked={isWanted}
        onChange={setIsWanted}
      />
      <div className="actions">
        <Action
          kind="strong"
          isDisabled={left === cells.length}
          onPress={() => {
            onUse();
            if (isWanted) void keepThem();
            else goTo(toCard);
          }}
        >
          {left === 0 ? words.use : words.useSome(left)}
        </Action>
        <ActionLink href={toCard}>{words.byHand}</ActionLink>
      </div>
    </>
  );
};
