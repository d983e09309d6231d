import { compareMeterings, type CurveChange } from '../../src/core/metering/compareMeterings.ts';
import type { Metering } from '../../src/core/metering/metering.ts';
import { seededRandom, type SeededRandom } from '../../src/num/seededRandom.ts';
import { followPlan, readBy, readers, type Reader } from './readings.ts';
import { tubes, type Tube } from './tubes.ts';

const meteringOf = (tube: Tube, reader: Reader, random: SeededRandom): Metering => ({
  version: 1,
  id: 'bench',
  at: '2031-05-06T07:08:09.000Z',
  ratedCurrentMa: tube.ratedMa,
  readings: followPlan(tube, readBy(reader, random)),
});

/** The same tube some months later. */
const changes: readonly { readonly name: string; readonly later: (tube: Tube) => Tube }[] = [
  { name: 'nothing changed', later: (tube) => tube },
  {
    name: 'draws 3 % less',
    later: (tube) => ({ ...tube, drawsMa: (p) => 0.97 * tube.drawsMa(p) }),
  },
  {
    name: 'draws 6 % less',
    later: (tube) => ({ ...tube, drawsMa: (p) => 0.94 * tube.drawsMa(p) }),
  },
  {
    name: 'fires 4 points later',
    later: (tube) => ({ ...tube, drawsMa: (p) => tube.drawsMa(p - 4) }),
  },
  {
    name: 'gives no more than 80 % of rated',
    later: (tube) => ({ ...tube, drawsMa: (p) => Math.min(0.8 * tube.ratedMa, tube.drawsMa(p)) }),
  },
];

const share = (part: number, all: number): string => `${((100 * part) / all).toFixed(1)} %`;

/** Two meterings held against each other, measured: what is said of changes and of none. */
export const compareBench = function* (tests: number): Generator<string> {
  yield 'comparing two meterings, each by the plan';
  for (const reader of readers) {
    for (const [i, { name, later }] of changes.entries()) {
      const random = seededRandom(7_008);
      const count = i === 0 && reader === readers[0] ? tests : Math.ceil(tests / 10);
      const said = new Map<CurveChange['how'] | 'cannot say', number>();
      for (let test = 0; test < count; test += 1) {
        const tube = tubes[test % tubes.length];
        if (tube === undefined) continue;
        const change = compareMeterings(
          meteringOf(tube, reader, random),
          meteringOf(later(tube), reader, random),
        );
        const how = change.ok ? change.value.how : 'cannot say';
        said.set(how, (said.get(how) ?? 0) + 1);
      }
      const words = [...said]
        .sort(([, a], [, b]) => b - a)
        .map(([how, times]) => `${how} ${share(times, count)}`);
      yield `  ${String(count)} × ${name}, ${reader.name}: ${words.join(', ')}`;
    }
  }
};
