import { onlyByAir } from '../../../core/book/onlyByAir.ts';
import type { ProvenSetting } from '../../../core/book/provenSetting.ts';
import { bookText as words } from '../../../words/en/screens/book.ts';
import type { BookEntry } from '../../state/queries.ts';

interface OnlyByAirProps {
  readonly entry: ProvenSetting;
  readonly all: readonly BookEntry[];
}

/** Where another kept setting would be typed the same and has other air: which. */
export const OnlyByAir = ({ entry, all }: OnlyByAirProps) => {
  const others = onlyByAir(
    entry,
    all.map((one) => one.entry),
  );
  return others.length === 0 ? null : (
    <strong className="book-air">{words.onlyByAir(others.map(({ code }) => code))}</strong>
  );
};
