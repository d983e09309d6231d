import type { Problem } from '../../../core/problem.ts';
import { Field } from './Field.tsx';

export interface LinesFieldProps {
  readonly label: string;
  readonly hint: string;
  readonly value: string;
  readonly problem: Problem | undefined;
  readonly onChange: (text: string) => void;
}

/** Several lines, each read for itself. */
export const LinesField = ({ value, onChange, ...field }: LinesFieldProps) => (
  <Field {...field}>
    {(box) => (
      <textarea
        {...box}
        className="field-input field-lines figure-text"
        rows={5}
        spellCheck={false}
        value={value}
        onChange={({ target }) => onChange(target.value)}
      />
    )}
  </Field>
);
