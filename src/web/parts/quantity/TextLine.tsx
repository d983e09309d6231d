import { useState } from 'react';
import type { Problem } from '../../../core/problem.ts';
import { Field } from './Field.tsx';
import { readLine } from './readLine.ts';

export interface TextLineProps {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly hint?: string;
  /** What is wrong with it that was not typed, such as that nothing was. */
  readonly problem?: Problem | undefined;
  readonly suggestions?: readonly string[];
  /** Figures alone: a phone shows its number keys. */
  readonly digits?: boolean;
}

/** One line of words, with suggestions where there are some. What cannot be kept stays as typed, and is told to nobody. */
export const TextLine = ({
  label,
  value,
  onChange,
  hint,
  problem,
  suggestions,
  digits = false,
}: TextLineProps) => {
  const [refusedText, setRefusedText] = useState<string>();
  const read = readLine(refusedText ?? value);
  return (
    <Field label={label} hint={hint} problem={read.ok ? problem : read.problem}>
      {(box) => (
        <>
          <input
            {...box}
            className="field-input"
            type="text"
            inputMode={digits ? 'numeric' : 'text'}
            autoComplete="off"
            value={refusedText ?? value}
            list={suggestions === undefined ? undefined : `${box.id}-list`}
            onChange={({ target }) => {
              const { ok } = readLine(target.value);
              setRefusedText(ok ? undefined : target.value);
              if (ok) onChange(target.value);
            }}
          />
          {suggestions === undefined ? null : (
            <datalist id={`${box.id}-list`}>
              {suggestions.map((each) => (
                <option key={each} value={each} />
              ))}
            </datalist>
          )}
        </>
      )}
    </Field>
  );
};
