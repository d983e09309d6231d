import { expect, it } from 'vitest';
import { designFor, usualWish } from './designFor.ts';
import { firstCard } from './firstCard.ts';
import { commonPowerPct, commonStock, newStudy } from './newStudy.ts';

const designed = (code: string) => {
  const card = designFor(newStudy(commonStock), usualWish(code, commonPowerPct), undefined);
  if (!card.ok) throw new Error(card.problem.code);
  return card.value.card;
};

it('keeps the first card as it is designed today; `vitest run -u` writes it anew', async () => {
  const text = `${JSON.stringify(designed('AAAA'), null, 1)}\n`;
  await expect(text).toMatchFileSnapshot('firstCard.json');
  expect(firstCard('QRST')).toEqual(designed('QRST'));
});
