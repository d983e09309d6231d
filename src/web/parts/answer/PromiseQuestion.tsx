import type { PromiseWish } from '../../../core/reading/promise.ts';
import { lengthWords, answerText as words } from '../../../words/texts.ts';
import { Choice } from '../choice/Choice.tsx';
import { QuantityField } from '../quantity/QuantityField.tsx';
import { readSize } from '../quantity/readers.ts';

type Knives = 'six' | 'two' | 'none';

/** What "of 200 parts, so many may need a knife" means in 100. None: an even chance that not one of 200 does. */
const outOf100: Readonly<Record<Knives, number>> = { six: 97, two: 99, none: 99.65 };
const knivesOf = (wish: PromiseWish): Knives | undefined =>
  (['six', 'two', 'none'] as const).find((knives) => outOf100[knives] === wish.outOf100);

export interface PromiseQuestionProps {
  readonly promise: PromiseWish;
  readonly onChange: (promise: PromiseWish) => void;
}

/** Asks for the promise in the user's own terms. */
export const PromiseQuestion = ({ promise, onChange }: PromiseQuestionProps) => (
  <div className="stack">
    <Choice<Knives>
      label={words.knives}
      value={knivesOf(promise)}
      options={(['six', 'two', 'none'] as const).map((value) => ({
        value,
        label: words.knifeOptions[value],
        more: words.knifeMore[value],
      }))}
      onChange={(knives) => onChange({ ...promise, outOf100: outOf100[knives] })}
    />
    <Choice
      label={words.holdsFor}
      value={promise.for}
      options={(['sheet', 'batch', 'newBatch'] as const).map((value) => ({
        value,
        label: words.holdsForOptions[value],
      }))}
      onChange={(chosen) => onChange({ ...promise, for: chosen })}
    />
    <QuantityField
      label={words.partLength}
      hint={words.partLengthHint}
      value={promise.partLengthMm}
      show={lengthWords}
      parse={readSize}
      onChange={(partLengthMm) => {
        if (partLengthMm !== undefined) onChange({ ...promise, partLengthMm });
      }}
    />
  </div>
);
