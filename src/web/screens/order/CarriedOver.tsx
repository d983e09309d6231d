import type { Study } from '../../../core/study/study.ts';
import { speedWords, orderRunText as words } from '../../../words/texts.ts';
import { More } from '../../parts/more/More.tsx';
import { useEarlier } from '../../state/useEarlier.ts';

/** What an order begins with, and how far each of it is trusted. */
export const CarriedOver = ({ study }: { readonly study: Study }) => {
  const { sheets } = useEarlier(study);
  const { tallies, cards, habit } = study;
  const parts = tallies.reduce((sum, { out, hangs, stays }) => sum + out + hangs + stays, 0);
  const fastest = Math.max(0, ...tallies.map(({ setting }) => setting.speedMmPerS));
  const lines = [
    tallies.length === 0
      ? words.carriedNone
      : words.carriedSheets(tallies.length, parts, speedWords(fastest)),
    ...(cards.length === 0 ? [] : [words.carriedCards(cards.length)]),
    ...(habit === undefined ? [] : [words.carriedHabit]),
    ...(sheets.length === 0 ? [] : [words.carriedEarlier(sheets.length)]),
  ];
  return (
    <More title={words.carried}>
      <ul className="order-carried">
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </More>
  );
};
