import type { RampLine } from '../../../core/card/rampCard.ts';
import type { Problem } from '../../../core/problem.ts';
import { lengthWords, focusText as words } from '../../../words/texts.ts';
import { Choice } from '../../parts/choice/Choice.tsx';
import { Section } from '../../parts/page/Page.tsx';
import { LinesField } from '../../parts/quantity/LinesField.tsx';
import { QuantityField } from '../../parts/quantity/QuantityField.tsx';
import { readLength } from '../../parts/quantity/readers.ts';
import type { FocusDraft, LineEnd } from './focusDraft.ts';

export interface RampReadingProps {
  readonly draft: FocusDraft;
  readonly lines: readonly RampLine[];
  readonly problem: Problem | undefined;
  readonly onChange: (part: Partial<FocusDraft>) => void;
}

/** What is read off the strip: where each line fades, or how wide one is. */
export const RampReading = ({ draft, lines, problem, onChange }: RampReadingProps) => (
  <Section title={words.read}>
    <Choice
      label={words.how}
      lay="list"
      value={draft.kind}
      options={(['fades', 'widths'] as const).map((value) => ({
        value,
        label: words.kinds[value],
        more: words.kindsMore[value],
      }))}
      onChange={(kind) => onChange({ kind })}
    />
    {draft.kind === 'widths' ? (
      <LinesField
        label={words.widths}
        hint={words.widthsHint}
        value={draft.widths}
        problem={problem}
        onChange={(widths) => onChange({ widths })}
      />
    ) : (
      <>
        <p className="soft">{words.fadesMore}</p>
        {lines.map(({ letter }) => (
          <FadedLine key={letter} letter={letter} draft={draft} onChange={onChange} />
        ))}
      </>
    )}
  </Section>
);

interface FadedLineProps extends Pick<RampReadingProps, 'draft' | 'onChange'> {
  readonly letter: string;
}

const FadedLine = ({ letter, draft, onChange }: FadedLineProps) => {
  const ends = draft.fades[letter] ?? { from: {}, to: {} };
  const end = (side: 'from' | 'to', label: string, runsOffLabel: string) => {
    const change = (next: LineEnd): void =>
      onChange({ fades: { ...draft.fades, [letter]: { ...ends, [side]: next } } });
    const { mm, runsOff = false } = ends[side];
    return (
      <div className="focus-end">
        <QuantityField
          label={label}
          optional
          value={runsOff ? undefined : mm}
          show={lengthWords}
          parse={readLength}
          onChange={(value) => change(value === undefined ? {} : { mm: value })}
        />
        <label className="focus-tick">
          <input
            type="checkbox"
            checked={runsOff}
            onChange={({ target }) => change(target.checked ? { runsOff: true } : {})}
          />
          <span>{runsOffLabel}</span>
        </label>
      </div>
    );
  };
  return (
    <fieldset className="focus-line">
      <legend className="unseen">{words.lineName(letter)}</legend>
      {end('from', words.from(letter), words.offLow)}
      {end('to', words.to(letter), words.offHigh)}
    </fieldset>
  );
};
