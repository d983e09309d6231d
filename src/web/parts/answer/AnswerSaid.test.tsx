import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { plainStudy } from '../../../../test/plainStudy.ts';
import { answerWithEarlier } from '../../../core/study/answerWithEarlier.ts';
import type { PromiseWish } from '../../../core/reading/promise.ts';
import { countOrders } from '../../../core/standing/countedOrders.ts';
import type { Standing } from '../../../core/standing/standing.ts';
import { AnswerSaid } from './AnswerSaid.tsx';

const answer = answerWithEarlier(
  plainStudy({
    cells: [12, 13, 14, 15, 16, 17].map((speedMmPerS, i) => ({
      powerPct: 30,
      speedMmPerS,
      grade: i < 3 ? ('out' as const) : ('stays' as const),
    })),
    ask: { powerPct: 30 },
  }),
  'fastest',
  [],
);

const promise: PromiseWish = { outOf100: 97, surePct: 95, partLengthMm: 60, for: 'batch' };

const shown = (part: Pick<Standing, 'kind' | 'isGuess'>): string => {
  const { recommended } = answer;
  if (recommended === null) throw new Error('no answer');
  const standing: Standing = {
    ...part,
    why: { code: 'slipped-once', params: { notOut: 1, parts: 60 } },
    next: 'count-order',
    promise,
    counted: countOrders(promise, []),
  };
  return renderToStaticMarkup(
    <AnswerSaid answer={{ ...answer, standing }} speed={recommended} kept={undefined} />,
  );
};

describe('the sentence of an answer', () => {
  it('promises where the sheet holds; not over a guess, nor where it failed', () => {
    expect(shown({ kind: 'holds', isGuess: false })).toContain('97 in 100 come out');
    expect(shown({ kind: 'not-known', isGuess: true })).not.toContain('97 in 100 come out');
    expect(shown({ kind: 'failed', isGuess: false })).not.toContain('97 in 100 come out');
  });
});
