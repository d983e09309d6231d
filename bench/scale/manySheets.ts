import type { Session } from '../../src/app/ports/ports.ts';
import { undescribedMachine } from '../../src/core/machine/machine.ts';
import type { Card } from '../../src/core/card/card.ts';
import type { ReadingEvent } from '../../src/core/reading/readingEvent.ts';
import type { SavedStudy } from '../../src/core/study/study.ts';
import { done } from '../../src/core/problem.ts';
import type { OpenedStore } from '../../src/store/kyselyStore.ts';
import { codeOf, grownCard, grownKept, grownSheet } from '../grown/grownStore.ts';

/** How much several workshops have gathered over many years. */
export interface ManySheets {
  readonly sheets: number;
  readonly cardsEach: number;
  readonly cellsEach: number;
  readonly kept: number;
}

/** So many sheets a change: what is kept in one is held in memory until then. */
const sheetsAtOnce = 200;

const cellIds = (count: number): readonly string[] =>
  Array.from(
    { length: count },
    (_, i) => `${'ABCDE'[i % 5] ?? 'A'}${String(1 + Math.floor(i / 5))}`,
  );

const card = (code: string, cells: readonly string[]): Card => ({
  ...grownCard(code),
  rungs: ['A', 'B', 'C', 'D', 'E'].map((letter, i) => ({
    letter,
    setting: { powerPct: 40, speedMmPerS: 12 + 3 * i, passes: 1 },
  })),
  cells: cells.map((id, i) => ({
    id,
    rung: id.slice(0, 1),
    xMm: 10 + 20 * (i % 5),
    yMm: 12 + 20 * Math.floor(i / 5),
  })),
});

/** One sheet with all its cards read. */
export const manyCellsSheet = (
  n: number,
  { cardsEach, cellsEach }: Pick<ManySheets, 'cardsEach' | 'cellsEach'>,
): SavedStudy => {
  const cells = cellIds(cellsEach);
  const codes = Array.from({ length: cardsEach }, (_, i) => codeOf(n * cardsEach + i));
  const { createdAt, ...sheet } = grownSheet(n);
  const events = codes.flatMap((cardCode) =>
    cells.map((cell): ReadingEvent => ({
      id: `${cardCode}-${cell}`,
      cardCode,
      at: createdAt,
      kind: 'graded',
      cell,
      grade: cell < 'D' ? 'out' : 'stays',
    })),
  );
  return { ...sheet, createdAt, cards: codes.map((code) => card(code, cells)), events };
};

/** Fills an empty store. */
export const fillMany = async (store: OpenedStore, many: ManySheets): Promise<void> => {
  const change = (work: (session: Session) => Promise<void>) =>
    store.change(async (session) => {
      await work(session);
      return done(undefined);
    });
  await change((session) =>
    session.insertMachine({
      version: 1,
      id: 'machine-1',
      isExample: false,
      isDefault: true,
      addedAt: '2031-01-01T00:00:00.000Z',
      machine: { ...undescribedMachine, name: 'the left one' },
      changes: [],
    }),
  );
  for (let from = 0; from < many.sheets; from += sheetsAtOnce)
    await change(async (session) => {
      for (let n = from; n < Math.min(many.sheets, from + sheetsAtOnce); n += 1) {
        const sheet = manyCellsSheet(n, many);
        await session.insertStudy(sheet, sheet.createdAt);
      }
    });
  await change(async (session) => {
    for (let n = 0; n < many.kept; n += 1) await session.insertEntry(grownKept(n, many.sheets));
  });
};
