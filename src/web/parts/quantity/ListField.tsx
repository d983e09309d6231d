import { useId, useState } from 'react';
import type { Outcome } from '../../../core/problem.ts';
import { problemInWords } from '../../../words/words.ts';
import './quantity.css';

export interface ListFieldProps {
  readonly label: string;
  readonly values: readonly number[];
  readonly show: (values: readonly number[]) => string;
  readonly parse: (text: string) => Outcome<readonly number[]>;
  readonly onChange: (values: readonly number[]) => void;
  readonly hint?: string;
}

/** Several quantities of one kind, written in one line as people write them. */
export const ListField = ({ label, values, show, parse, onChange, hint }: ListFieldProps) => {
  const [typed, setTyped] = useState<string | undefined>(undefined);
  const id = useId();
  const read = typed === undefined ? undefined : parse(typed);
  const problem = read?.ok === false ? problemInWords(read.problem) : undefined;
  return (
    <div className="quantity">
      <label htmlFor={id} className="field-label">
        {label}
      </label>
      <input
        id={id}
        className="field-input figure-text"
        type="text"
        autoComplete="off"
        spellCheck={false}
        value={typed ?? show(values)}
        aria-invalid={problem !== undefined}
        aria-describedby={`${id}-hint`}
        onChange={(event) => {
          const text = event.target.value;
          setTyped(text);
          const outcome = parse(text);
          if (outcome.ok) onChange(outcome.value);
        }}
      />
      <p
        id={`${id}-hint`}
        className={problem === undefined ? 'field-hint' : 'field-problem'}
        role={problem === undefined ? undefined : 'alert'}
      >
        {problem === undefined ? hint : `${problem.message} ${problem.remedy}`}
      </p>
    </div>
  );
};
