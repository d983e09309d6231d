import { scoringGuess } from '../card/scoring.ts';
import type { Setting } from '../machine/setting.ts';
import { done, refused, type Outcome } from '../problem.ts';
import { doseReach, settingForDose, type MarkMaking } from './doseLadder.ts';
import { linesOver, type Engraving, type Mark } from './mark.ts';
import { markProblem, type MarkLimits } from './markLimits.ts';

/** Lines faster than this tend to shake, and fillings are seldom run faster on a gantry, mm/s. Common practice, no source. */
export const usualFastest = { score: 150, engrave: 300 } as const;

/** What the settings of a mark are made on beside a cut: its air, and no faster than is usual. */
export const makingBeside = (
  { air }: Pick<Setting, 'air'>,
  { machine, believed }: MarkLimits,
  of:
    { readonly kind: 'score' } | ({ readonly kind: 'engrave' } & Pick<Engraving, 'lineSpacingMm'>),
): MarkMaking => ({
  machine,
  believed,
  linesOver: of.kind === 'score' ? 1 : linesOver(of.lineSpacingMm),
  fastestMmPerS: usualFastest[of.kind],
  ...(air === undefined ? {} : { air }),
});

/**
 * Where to begin with a score: the guess for words of a card (`scoringGuess`) from the power of the proven cut; where that may
 * come through, the most that surely does not. A guess by common practice, no source: to be tried on scrap.
 * Refuses: `marks-no-room`, where even the least steady power at the fastest may come through.
 */
export const proposeScore = (cut: Setting, limits: MarkLimits): Outcome<Mark> => {
  const { powerPct, air } = cut;
  const guess: Mark = {
    kind: 'score',
    setting: scoringGuess({ ...limits, powerPct, ...(air === undefined ? {} : { air }) }),
  };
  if (markProblem(guess, limits) === undefined) return done(guess);
  const making = makingBeside(cut, limits, { kind: 'score' });
  return held('score', settingForDose(doseReach(making)[1], making), limits);
};

/**
 * Where to begin with an engraving: halfway, in ratio, between the least that the tube gives steadily at the fastest and the most
 * that surely does not come through. A guess by common practice, no source: a strip finds the shade that is wanted.
 * Refuses: `marks-no-room`.
 */
export const proposeEngraving = (
  cut: Setting,
  limits: MarkLimits,
  lineSpacingMm: number,
): Outcome<Mark> => {
  const making = makingBeside(cut, limits, { kind: 'engrave', lineSpacingMm });
  const [least, most] = doseReach(making);
  const setting = settingForDose(least < most ? Math.sqrt(least * most) : most, making);
  return held('engrave', setting, limits, lineSpacingMm);
};

const held = (
  kind: 'score' | 'engrave',
  setting: Setting | undefined,
  limits: MarkLimits,
  lineSpacingMm = 0,
): Outcome<Mark> => {
  if (setting === undefined) return refused('marks-no-room');
  const mark: Mark = kind === 'score' ? { kind, setting } : { kind, setting, lineSpacingMm };
  return markProblem(mark, limits) === undefined ? done(mark) : refused('marks-no-room');
};
