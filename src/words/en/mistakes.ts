import type { MistakeCode } from '../../core/problems/cutmodel.ts';
import type { Sentences } from '../shape/sentence.ts';

/** What an answer has to say of slips of the hand that the cells betray. */
export const mistakeWords = {
  'look-again': {
    message: (p) => `Look again at: ${p.settings}. By all other shapes this is most unlikely.`,
    remedy: () =>
      'Check the grade, and what was typed for that shape; one at a flaw of the sheet is marked as spoilt.',
  },
  'behaves-like': {
    message: (p) => `The shapes typed as ${p.typed} behave like those cut at ${p.like}.`,
    remedy: () => 'Check what was typed; a wrong setting can be corrected under “as cut”.',
  },
  'cards-disagree': {
    message: (p) =>
      `Cards disagree more than sheets of one batch do: “${p.odd}” cuts ${p.byPct} % ${p.way} than “${p.others}”. The answer lies between them.`,
    remedy: () =>
      'Ask, cheapest first: is the lens clean, focus and air as before? Were the same settings typed? Same thickness? Same batch? If it is another batch or thickness, read it as a sheet of its own.',
  },
} satisfies Sentences<MistakeCode>;
