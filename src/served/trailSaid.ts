import type { ChangeOnTrail } from '../app/book/settingTrail.ts';
import type { Listed } from '../app/ports/ports.ts';
import { problemInWords } from '../words/words.ts';

/** What was done to kept settings, with what stands against taking it back in words. */
export const trailSaid = ({ found, total }: Listed<ChangeOnTrail>) => ({
  changes: found.map(({ held, ...line }) => ({
    ...line,
    ...(held === undefined ? {} : { held: problemInWords(held) }),
  })),
  total,
});
