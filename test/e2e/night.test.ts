import { describe, expect, it } from 'vitest';
import { fallsShort, type Figure } from '../../bench/night/nightPart.ts';
import { measureGrowth } from '../../bench/grown/growthPart.ts';
import { bringAbout } from '../../bench/server/faultsPart.ts';
import { killOften } from '../../bench/server/killsPart.ts';
import { askManyThings } from '../../bench/server/requestsPart.ts';

/** A tenth of what a night does. */
const shortIn = async (figures: AsyncIterable<Figure>): Promise<readonly string[]> => {
  const short: string[] = [];
  for await (const figure of figures)
    if (fallsShort(figure))
      short.push(`${figure.what}: ${String(figure.value)} ${(figure.cases ?? []).join('\n')}`);
  return short;
};

describe('a tenth of the night', () => {
  it('loses nothing when the program is killed', { timeout: 900_000 }, async () => {
    expect(await shortIn(killOften({ each: 9, seed: 2 }))).toEqual([]);
  });

  it('has words for every fault, and loses nothing by one', { timeout: 900_000 }, async () => {
    expect(await shortIn(bringAbout())).toEqual([]);
  });

  it('is broken by no request made from its own description', { timeout: 900_000 }, async () => {
    const short = await shortIn(askManyThings({ requests: 2000, seed: 2 }));
    // How long the slowest takes is a figure of the night: here other tests run beside it.
    expect(short.filter((figure) => !figure.startsWith('slowest'))).toEqual([]);
  });

  it(
    'answers a grown workshop with about what a bare SELECT takes',
    { timeout: 900_000 },
    async () => {
      const size = { sheets: 200, kept: 500, events: 2000, roundTrip: 10_000, rounds: 5 };
      const counted: string[] = [];
      for await (const figure of measureGrowth(size)) {
        // Ratios to hundreds of rows are those of the night; here other tests run beside it, and only what is counted counts.
        if (figure.unit === undefined && figure.atLeast !== undefined) {
          counted.push(figure.what);
          expect(figure).toSatisfy((one: Figure) => !fallsShort(one));
        }
      }
      expect(counted).toEqual(['readings of the large sheet', 'readings out and in again']);
    },
  );
});
