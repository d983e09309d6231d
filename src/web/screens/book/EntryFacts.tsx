import type { ProvenSetting } from '../../../core/book/provenSetting.ts';
import type { PromiseWish } from '../../../core/reading/promise.ts';
import { bookText as words, peopleText } from '../../../words/texts.ts';

/** What the setting holds for and where it came from. */
export const EntryFacts = ({
  entry,
  promise,
}: {
  readonly entry: ProvenSetting;
  /** For the part that is cut. */
  readonly promise: PromiseWish;
}) => {
  const { holdsFor, cameFrom } = entry;
  const { material, nominalThicknessMm, measuredThicknessMm, batch, machine } = holdsFor;
  return (
    <dl className="entry-facts">
      <Fact name={words.holdsFor}>
        {[
          words.stock(material, nominalThicknessMm, measuredThicknessMm),
          ...(batch === undefined ? [] : [words.batch(batch)]),
          ...(machine === undefined ? [] : [machine]),
          words.promiseFor[promise.for],
          words.partLength(promise.partLengthMm),
        ].join('; ')}
        .
      </Fact>
      <Fact name={words.cameFrom}>
        {words.from(cameFrom.cardCodes, cameFrom.cellCount, cameFrom.partsTallied, cameFrom.habit)}.
      </Fact>
      <Fact name={words.keptOn}>
        {[
          new Date(entry.keptAt).toLocaleDateString(),
          ...(entry.by === undefined ? [] : [peopleText.keptBy(entry.by)]),
        ].join(' ')}
        .
      </Fact>
      <Fact name={words.label}>
        <span className="book-code figure-text">{entry.code}</span>
      </Fact>
      {entry.personsChoice === undefined ? null : (
        <Fact name={words.choice}>{entry.personsChoice}</Fact>
      )}
    </dl>
  );
};

const Fact = ({
  name,
  children,
}: {
  readonly name: string;
  readonly children: React.ReactNode;
}) => (
  <div>
    <dt>{name}</dt>
    <dd>{children}</dd>
  </div>
);
