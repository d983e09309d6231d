import { describe, expect, it } from 'vitest';
import { atCommandLine } from './atCommandLine.ts';
import { dangers } from './cases.ts';
import type { Danger, HeldTo, Way } from './danger.ts';
import type { Came } from './made.ts';
import { throughHttp } from './throughHttp.ts';
import type { FilesMade, Firing } from './whatFires.ts';

const ways: Readonly<Record<Way, (danger: Danger) => Promise<Came>>> = {
  'command-line': atCommandLine,
  http: throughHttp,
};

const times = (firing: Firing, { believed }: FilesMade): number =>
  believed === undefined
    ? NaN
    : ((firing.powerPct * firing.passes) / firing.speedMmPerS) *
      (believed.v50MmPerS / believed.powerPct);

/** A hair for what is rounded when it is written down. */
const rounding = 1.005;

const hold = ({ said, files, written }: Came, to: HeldTo): void => {
  expect(written.length).toBeGreaterThan(0);
  expect(files.fires.length).toBeGreaterThan(0);
  expect(said).toEqual(expect.arrayContaining([...(to.says ?? [])]));
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

describe.each(['command-line', 'http'] as const)('what could hurt someone, by %s', (way) => {
  const tried = dangers.filter(({ only = way }) => only === way);
  it.each(tried.map((danger) => [`${danger.door}: ${danger.what}`, danger] as const))(
    '%s',
    async (_, danger) => {
      const came = await ways[way](danger);
      if ('refused' in danger.then) {
        const { refused } = danger.then;
        expect(came.refused).toBe(typeof refused === 'string' ? refused : refused[way]);
        expect(came.written).toEqual([]);
      } else {
        expect(came.refused).toBeUndefined();
        hold(came, danger.then.made);
      }
    },
  );
});
