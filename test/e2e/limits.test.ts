import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { dangers } from '../dangers/cases.ts';
import type { Danger } from '../dangers/danger.ts';
import { hold } from '../dangers/held.ts';
import { desk, type OpenedPage } from './page.ts';
import { canBeTyped, throughBrowser } from './throughBrowser.ts';
import { openWorkshop } from './workshop.ts';

/** The dangers that a page has a place for, typed into it; the same table is tried at the command line and through HTTP. */
const workshop = openWorkshop();
let opened: OpenedPage | undefined;
beforeAll(async () => {
  opened = await workshop.visit({ viewport: desk });
});
afterAll(() => opened?.close());

const typed = dangers.filter(canBeTyped);

const machine = { maxPowerPct: 30, speedRangeMmPerS: [1, 100] };
const onWeakened = (what: string, ask: object): Danger => ({
  what: `kept to 30 %: ${what}`,
  door: 'card',
  ask: {
    version: 1,
    study: { version: 1, machine, stock: { material: 'plywood', thicknessMm: 3.1 } },
    powerPct: 28,
    sheetMm: [200, 150],
    ...ask,
  },
  then: { refused: 'on the screen' },
});
/** What is kept to 30 % is asked for a little more and for much more, part by part. */
const aboveKept = [40, 95].flatMap((powerPct): readonly Danger[] => [
  onWeakened(`power asked for, ${String(powerPct)} %`, { powerPct }),
  onWeakened(`scoring line, ${String(powerPct)} %`, { scoring: { powerPct, speedMmPerS: 100 } }),
  onWeakened(`window and outline, ${String(powerPct)} %`, {
    trusted: { powerPct, speedMmPerS: 30 },
  }),
  onWeakened(`settings handed over, ${String(powerPct)} %`, {
    rungs: [10, 20].map((speedMmPerS) => ({ powerPct, speedMmPerS })),
  }),
  onWeakened(`one setting among good ones, ${String(powerPct)} %`, {
    rungs: [
      { powerPct: 20, speedMmPerS: 10 },
      { powerPct, speedMmPerS: 20 },
    ],
  }),
]);

it('most of the table has a place on the page', () => {
  // Comb and slot cards are cut with a setting that an answer or the book gives: none is typed.
  const toType = dangers.filter(({ door }) => door !== 'kerf');
  expect(typed.length).toBeGreaterThan(0.75 * toType.length);
});

describe('what could hurt someone, typed into the page', () => {
  const all = [...typed, ...aboveKept];
  it.each(all.map((danger, i) => [`${danger.door}: ${danger.what}`, danger, i] as const))(
    '%s',
    async (_, danger, i) => {
      if (opened === undefined) throw new Error('no page');
      const id = `danger-${String(i)}`;
      const came = await throughBrowser(opened.page, workshop.base, { danger, id });
      if ('refused' in danger.then) {
        expect(came.written).toEqual([]);
        expect(came.refused).toBeDefined();
        expect(came.refused).not.toBe('unsaid');
      } else {
        expect(came.refused).toBeUndefined();
        // The page says in words what the other doors say as codes.
        hold(came, { ...danger.then.made, says: [] });
      }
    },
  );
});
