import { useId, useState } from 'react';
import type { Outcome } from '../../../core/problem.ts';
import { problemInWords } from '../../../words/words.ts';
import './quantity.css';

export interface QuantityFieldProps {
  readonly label: string;
  /** In the base unit; absent where nothing is known. */
  readonly value: number | undefined;
  /** How a person would write the value, unit included: `14 mm/s`. */
  readonly show: (value: number) => string;
  /** Reads what a person typed, in any unit that people write. */
  readonly parse: (text: string) => Outcome<number>;
  readonly onChange: (value: number | undefined) => void;
  /** Whether the field may be left empty. */
  readonly optional?: boolean;
  readonly hint?: string;
  readonly hideLabel?: boolean;
}

/**
 * A number with its unit, written as people write it. What was typed stays as typed until the field is left; a text that
 * cannot be read says why and changes nothing.
 */
export const QuantityField = (props: QuantityFieldProps) => {
  const { label, value, show, parse, onChange, optional = false, hint, hideLabel = false } = props;
  const [typed, setTyped] = useState<string | undefined>(undefined);
  const id = useId();
  const shown = typed ?? (value === undefined ? '' : show(value));
  const read = typed === undefined || typed.trim() === '' ? undefined : parse(typed);
  const problem = read?.ok === false ? problemInWords(read.problem) : undefined;

  const type = (text: string): void => {
    setTyped(text);
    if (text.trim() === '') {
      if (optional) onChange(undefined);
      return;
    }
    const outcome = parse(text);
    if (outcome.ok) onChange(outcome.value);
  };

  const describedBy =
    problem !== undefined ? `${id}-problem` : hint !== undefined ? `${id}-hint` : undefined;
  return (
    <div className="quantity">
      <label htmlFor={id} className={hideLabel ? 'unseen' : 'field-label'}>
        {label}
      </label>
      <input
        id={id}
        className="field-input figure-text"
        type="text"
        autoComplete="off"
        spellCheck={false}
        value={shown}
        aria-invalid={problem !== undefined}
        aria-describedby={describedBy}
        onChange={(event) => type(event.target.value)}
        onFocus={(event) => event.target.select()}
        onBlur={() => {
          if (problem === undefined) setTyped(undefined);
        }}
      />
      {problem !== undefined ? (
        <p id={`${id}-problem`} className="field-problem" role="alert">
          {problem.message} {problem.remedy}
        </p>
      ) : hint !== undefined ? (
        <p id={`${id}-hint`} className="field-hint">
          {hint}
        </p>
      ) : null}
    </div>
  );
};
