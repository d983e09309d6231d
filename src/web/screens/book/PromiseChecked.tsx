import { bookText as words } from '../../../words/en/screens/book.ts';
import type { BookEntry } from '../../state/queries.ts';
import { Notice } from '../../parts/notice/Notice.tsx';

/** How the orders counted so far stand to the promise. */
export const PromiseChecked = ({ check }: { readonly check: BookEntry['check'] }) => {
  const { verdict, parts, notOut, allowedFor, chanceOfSoManyPct } = check;
  const worse = verdict === 'worse-than-promised';
  return (
    <Notice tone={worse ? 'care' : 'say'} title={words.verdicts[verdict]}>
      {parts === 0 ? null : <p>{words.tallied(notOut, parts, allowedFor)}</p>}
      {chanceOfSoManyPct === undefined || notOut <= allowedFor ? null : (
        <p>{words.chance(chanceOfSoManyPct)}</p>
      )}
      {worse ? <p>{words.worseDo}</p> : null}
    </Notice>
  );
};
