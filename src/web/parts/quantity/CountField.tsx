import { useState, type KeyboardEvent } from 'react';
import { Field } from './Field.tsx';
import { readCount } from './readers.ts';
import { useReplaceable } from './useReplaceable.ts';

export interface CountFieldProps {
  readonly label: string;
  readonly value: number;
  readonly least: number;
  readonly most: number;
  readonly onChange: (value: number) => void;
}

/** A whole number, stepped by a thumb, by arrow keys, or typed; it counts as it is typed. */
export const CountField = ({ label, value, least, most, onChange }: CountFieldProps) => {
  const [typed, setTyped] = useState<string | undefined>(undefined);
  const entered = useReplaceable(typed === undefined ? String(value) : undefined);
  const step = (by: number): void => {
    setTyped(undefined);
    onChange(Math.min(most, Math.max(least, value + by)));
  };
  const read = typed === undefined ? undefined : readCount(least, most)(typed);
  const problem = read?.ok === false ? read.problem : undefined;
  const type = (text: string): void => {
    setTyped(text);
    const count = readCount(least, most)(text);
    if (count.ok && count.value !== value) onChange(count.value);
  };
  /** What was not taken stays, and why; an emptied field shows what it counts as. */
  const leave = (): void => {
    if (problem === undefined || typed?.trim() === '') setTyped(undefined);
  };
  const press = (event: KeyboardEvent): void => {
    if (event.key !== 'ArrowUp' && event.key !== 'ArrowDown') return;
    event.preventDefault();
    step(event.key === 'ArrowUp' ? 1 : -1);
  };
  return (
    <Field label={label} problem={problem}>
      {(box) => (
        <div className="count-group">
          <button
            type="button"
            className="count-step"
            tabIndex={-1}
            aria-hidden="true"
            disabled={value <= least}
            onClick={() => step(-1)}
          >
            −
          </button>
          <input
            {...box}
            ref={entered}
            className="field-input count-input figure-text"
            type="text"
            inputMode="numeric"
            role="spinbutton"
            autoComplete="off"
            aria-valuenow={value}
            aria-valuemin={least}
            aria-valuemax={most}
            value={typed ?? String(value)}
            onChange={(event) => type(event.target.value)}
            onFocus={(event) => event.target.select()}
            onBlur={leave}
            onKeyDown={press}
          />
          <button
            type="button"
            className="count-step count-more"
            tabIndex={-1}
            aria-hidden="true"
            disabled={value >= most}
            onClick={() => step(1)}
          >
            +
          </button>
        </div>
      )}
    </Field>
  );
};
