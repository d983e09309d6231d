import { soughtIn } from '../../core/search/sought.ts';
import { done, refused, type Outcome } from '../../core/problem.ts';
import { sameMaterialAs } from '../../core/stock/sameMaterial.ts';
import type { Listed, Ports, Stretch } from '../ports/ports.ts';
import type { StudySummary } from '../ports/stored.ts';

export interface SheetsWanted extends Stretch {
  /** Absent: whatever there is. */
  readonly text?: string;
  /** Only other sheets of the same material as this one. */
  readonly like?: string;
}

/** The sheets that fit all the words, the last touched first. No words: all of them. Refuses: `study-not-found`. */
export const listStudies = (
  { store }: Pick<Ports, 'store'>,
  { text = '', like, ...stretch }: SheetsWanted = {},
): Promise<Outcome<Listed<StudySummary>>> =>
  store.read(async (session) => {
    const asked = { ...stretch, sought: soughtIn(text) };
    if (like === undefined) return done(await session.listSheets(asked));
    const sheet = await session.sheet(like);
    if (sheet === undefined) return refused('study-not-found', { id: like });
    const { isExample, stock } = sheet;
    const isSameMaterial = sameMaterialAs(stock.material);
    return done(
      await session.listSheets({ ...asked, kind: { isExample, isSameMaterial, except: like } }),
    );
  });
