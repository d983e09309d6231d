import { useId } from 'react';
import type { Problem } from '../../../core/problem.ts';
import { problemInWords } from '../../../words/words.ts';
import './quantity.css';

export interface LinesFieldProps {
  readonly label: string;
  readonly hint: string;
  readonly value: string;
  readonly problem: Problem | undefined;
  readonly onChange: (text: string) => void;
}

/** Several lines, each read for itself. */
export const LinesField = ({ label, hint, value, problem, onChange }: LinesFieldProps) => {
  const id = useId();
  const said = problem === undefined ? undefined : problemInWords(problem);
  return (
    <div className="quantity">
      <label htmlFor={id} className="field-label">
        {label}
      </label>
      <textarea
        id={id}
        className="field-input field-lines figure-text"
        rows={5}
        spellCheck={false}
        value={value}
        aria-invalid={said !== undefined}
        aria-describedby={`${id}-hint`}
        onChange={(event) => onChange(event.target.value)}
      />
      <p
        id={`${id}-hint`}
        className={said === undefined ? 'field-hint' : 'field-problem'}
        role={said === undefined ? undefined : 'alert'}
      >
        {said === undefined ? hint : `${said.message} ${said.remedy}`}
      </p>
    </div>
  );
};
