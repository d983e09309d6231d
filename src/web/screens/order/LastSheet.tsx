import type { SheetVerdict } from '../../../core/running/sheetVerdict.ts';
import type { CountedSheet } from '../../../core/study/orderSoFar.ts';
import type { LookAt } from '../../../core/watch/whatToLookAt.ts';
import { orderRunText as words, watchVerdictText } from '../../../words/texts.ts';
import { Looks } from '../../parts/looks/Looks.tsx';
import { More } from '../../parts/more/More.tsx';
import { Notice } from '../../parts/notice/Notice.tsx';

export interface LastSheetProps {
  readonly sheet: CountedSheet;
  readonly verdict: SheetVerdict;
}

/** What the sheet counted last says: bad luck, a flawed board, a bad sheet or a drifting machine; nothing where it is fine. */
export const LastSheet = ({ sheet, verdict }: LastSheetProps) => {
  const { kind, looks } = verdict;
  if (kind === 'fine') return null;
  return (
    <Notice tone={kind === 'luck' ? 'say' : 'care'} title={words.sheet(sheet.number)}>
      <p>{verdictSaid(verdict)}</p>
      {looks.length === 0 ? null : (
        <More title={words.lookAt}>
          <Looked looks={looks} />
        </More>
      )}
    </Notice>
  );
};

/** What a sheet says, in a sentence. */
export const verdictSaid = (verdict: SheetVerdict): string =>
  verdict.kind === 'fine' ? '' : words.says[verdict.kind](verdict);

/** What to look at, each with how and its cautions. */
export const Looked = ({ looks }: { readonly looks: readonly LookAt[] }) => {
  const said = looks.map((look) => watchVerdictText.look(look));
  const cautions = [...new Set(said.flatMap((look) => look.cautions))];
  return (
    <>
      <Looks looks={said.map(({ name, how }) => [name, how])} numbered />
      <ul className="order-look-cautions">
        {cautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </>
  );
};
