import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { designCard } from '../src/core/card/designCard.ts';
import { cardRequestFor } from '../src/core/study/cardRequestFor.ts';
import { writeCardFile } from '../src/formats/cardFile.ts';
import { parseCardRequest } from '../src/formats/cardRequestFile.ts';

const page = (name: string): string =>
  readFileSync(join(import.meta.dirname, '../docs/formats', name), 'utf8');

/** The keys that a page's tables name in their first column. */
const keysOf = (name: string): readonly string[] =>
  [...page(name).matchAll(/^\| (`[^|]*)\|/gm)].flatMap(([, cell]) =>
    [...(cell ?? '').matchAll(/`([^`]+)`/g)].map(([, key]) => key ?? ''),
  );

const request = (() => {
  const example: unknown = JSON.parse(
    /```json\n([^`]+)```/.exec(page('card-request.md'))?.[1] ?? '',
  );
  const parsed = parseCardRequest(example);
  if (!parsed.ok) throw new Error(parsed.problem.code);
  return parsed.value;
})();

describe('the pages on cards', () => {
  it('show a request that is accepted as it stands, and name every key of it', () => {
    const named = keysOf('card-request.md');
    for (const key of [...Object.keys(request.wish), 'version', 'study', 'gcode']) {
      expect(named).toContain(key);
    }
  });

  it('name every key of a card file, and none that it never has', () => {
    // A card that says all that a card may say, overdrive too: its tube reaches its rating below what is asked for.
    const tubePoints = [
      { powerPct: 10, currentMa: 6 },
      { powerPct: 30, currentMa: 18 },
    ];
    const machine = { ...request.study.machine, ratedCurrentMa: 18, tubePoints };
    const designed = designCard(
      cardRequestFor(
        { ...request.study, machine },
        {
          ...request.wish,
          code: 'K7WM',
          order: 'free',
          overdrive: true,
          trusted: { powerPct: 30, speedMmPerS: 20, passes: 1 },
          batch: 'B',
          sheet: 'S',
        },
      ),
    );
    if (!designed.ok) throw new Error(designed.problem.code);
    const file = JSON.parse(writeCardFile({ ...designed.value.card, note: 'N' })) as object;
    const named = keysOf('card.md').filter((key) => !/[[{.]/.test(key));
    expect(named).toEqual(expect.arrayContaining(Object.keys(file)));
    // Inside another entry, or only of the example's cards.
    const inside = ['speedMmPerS', 'passes', 'minPowerPct', 'air', 'isExample'];
    expect(named.filter((key) => !inside.includes(key) && !Object.hasOwn(file, key))).toEqual([]);
  });
});
