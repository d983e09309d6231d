import type { Problem } from '../../../core/problem.ts';
import { Field } from './Field.tsx';

export interface LinesFieldProps {
  readonly label: string;
  readonly hint: string;
  readonly value: string;
  readonly problem: Problem | undefined;
  /** A person's own sentences, and no figures. */
  readonly isProse?: boolean;
  readonly onChange: (text: string) => void;
}

/** Several lines. */
export const LinesField = ({ value, onChange, isProse = false, ...field }: LinesFieldProps) => (
  <Field {...field}>
    {(box) => (
      <textarea
        {...box}
        className={`field-input field-lines${isProse ? '' : ' figure-text'}`}
        rows={5}
        spellCheck={isProse}
        value={value}
        onChange={({ target }) => onChange(target.value)}
      />
    )}
  </Field>
);
