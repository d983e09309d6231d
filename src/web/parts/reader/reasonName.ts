import type { SpoiltReason } from '../../../core/reading/grade.ts';
import type { FlawKind } from '../../../core/stock/flawKind.ts';
import { readingText as words } from '../../../words/texts.ts';

/** A flaw of the sheet itself, as it is called where the sheet is of such material; the rest has one name. */
export const reasonName = (reason: SpoiltReason, flaws: FlawKind): string =>
  flaws === 'flaw' && reason === 'glue-pocket' ? words.flaw : words.reasons[reason];
