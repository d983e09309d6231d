import { bookText as words } from '../../../words/texts.ts';
import type { BookEntry } from '../../state/queries.ts';

/** Where another kept setting would be typed the same and has other air: which. */
export const OnlyByAir = ({ found: { onlyByAir = [] } }: { readonly found: BookEntry }) =>
  onlyByAir.length === 0 ? null : (
    <strong className="book-air">{words.onlyByAir(onlyByAir)}</strong>
  );
