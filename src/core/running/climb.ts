import type { CountedSheet, OrderSoFar } from '../study/orderSoFar.ts';
import type { Foretold } from '../study/foretold.ts';
import type { StartedOrder } from '../study/startedOrder.ts';

/** One sheet of the climb. */
export interface ClimbSheet {
  /** From 1. */
  readonly number: number;
  /** The setting that most of its parts were cut with, and the others. */
  readonly speedMmPerS: number;
  readonly others: readonly { readonly speedMmPerS: number; readonly parts: number }[];
  readonly parts: number;
  readonly notOut: number;
  readonly spoilt: number;
  /** Where the fastest speed that keeps the promise was believed to lie before the sheet was cut. */
  readonly keeps?: Pick<Foretold, 'sureMmPerS' | 'evenMmPerS' | 'hardlyMmPerS'>;
}

/** The climb, sheet by sheet. O(counts). */
export const climbOf = ({ sheets }: OrderSoFar): readonly ClimbSheet[] =>
  sheets.map(({ number, tallies, parts, hangs, stays, spoilt }) => {
    const [main, ...others] = tallies;
    return {
      number,
      speedMmPerS: main.setting.speedMmPerS,
      others: others.map((tally) => ({
        speedMmPerS: tally.setting.speedMmPerS,
        parts: tally.out + tally.hangs + tally.stays + tally.spoilt,
      })),
      parts,
      notOut: hangs + stays,
      spoilt,
      ...(main.foretold === undefined ? {} : { keeps: main.foretold }),
    };
  });

/**
 * Seconds that the climb has saved so far beside cutting every sheet at the first one's setting: the shorter cuts, less each
 * setting that was typed for it, less the knife and the cutting again on the later sheets beyond what the first setting was
 * foretold to need. Below 0: it has cost so much. 0 for the first sheet.
 */
export const savedByClimbing = (
  { costS, partLengthMm }: Pick<StartedOrder, 'costS' | 'partLengthMm'>,
  { sheets }: Pick<OrderSoFar, 'sheets'>,
): number => {
  const first = sheets[0]?.tallies[0];
  if (first === undefined) return 0;
  const firstMmPerS = first.setting.speedMmPerS;
  const notOutShare = first.foretold === undefined ? 0 : 1 - first.foretold.outOf100 / 100;
  let typed = firstMmPerS;
  return sheets.slice(1).reduce((saved, sheet) => {
    const main = sheet.tallies[0].setting.speedMmPerS;
    const typing = sheet.tallies.filter(({ setting }) => setting.speedMmPerS !== typed).length;
    typed = main;
    return (
      saved +
      cutSaved(sheet, firstMmPerS, partLengthMm) -
      typing * costS.type -
      sheet.hangs * costS.knife -
      sheet.stays * costS.recut +
      notOutShare * sheet.parts * costS.knife
    );
  }, 0);
};

const cutSaved = ({ tallies }: CountedSheet, firstMmPerS: number, partLengthMm: number): number =>
  tallies.reduce(
    (sum, { setting, out, hangs, stays, spoilt }) =>
      sum +
      (out + hangs + stays + spoilt) * partLengthMm * (1 / firstMmPerS - 1 / setting.speedMmPerS),
    0,
  );
