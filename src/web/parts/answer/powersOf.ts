import type { Study } from '../../../core/study/study.ts';

/** The power settings that a study knows something of, ascending; the asked one among them. */
export const powersOf = (study: Study): readonly number[] => {
  const powers = [
    ...study.cards.flatMap((card) => card.rungs.map(({ setting }) => setting.powerPct)),
    ...study.tallies.map(({ setting }) => setting.powerPct),
    ...(study.habit === undefined ? [] : [study.habit.powerPct]),
    ...(study.ask.powerPct === undefined ? [] : [study.ask.powerPct]),
  ];
  return [...new Set(powers)].sort((a, b) => a - b);
};
