import { expect } from 'vitest';
import type { HeldTo } from './danger.ts';
import type { Came } from './made.ts';
import type { FilesMade, Firing } from './whatFires.ts';

const times = (firing: Firing, { believed }: FilesMade): number =>
  believed === undefined
    ? NaN
    : ((firing.powerPct * firing.passes) / firing.speedMmPerS) *
      (believed.v50MmPerS / believed.powerPct);

/** A hair for what is rounded when it is written down. */
const rounding = 1.005;

/** Holds what was made to its bounds. */
export const hold = ({ said, files, written }: Came, to: HeldTo): void => {
  expect(written.length).toBeGreaterThan(0);
  expect(files.fires.length).toBeGreaterThan(0);
  expect(said).toEqual(expect.arrayContaining([...(to.says ?? [])]));
  for (const caution of to.cautions ?? [])
    for (const [name, words] of files.words) expect(words, name).toContain(caution);
  for (const firing of files.fires) {
    if (to.mostPowerPct !== undefined)
      expect(firing.powerPct, firing.part).toBeLessThanOrEqual(to.mostPowerPct * rounding);
    if (to.mostTimes !== undefined)
      expect(times(firing, files), firing.part).toBeLessThanOrEqual(to.mostTimes * rounding);
    if (to.mostMarksTimes !== undefined && firing.part === 'marks')
      expect(times(firing, files)).toBeLessThanOrEqual(to.mostMarksTimes * rounding);
    if (to.speedsMmPerS !== undefined) {
      const [least, most] = to.speedsMmPerS;
      expect(firing.speedMmPerS, firing.part).toBeGreaterThanOrEqual(least / rounding);
      expect(firing.speedMmPerS, firing.part).toBeLessThanOrEqual(most * rounding);
    }
  }
};
