import { useState } from 'react';
import type { Outcome } from '../../../core/problem.ts';
import { Field, type FieldProps } from './Field.tsx';
import { useReplaceable } from './useReplaceable.ts';

export interface TypedFieldProps<T> extends Pick<
  FieldProps,
  'label' | 'hint' | 'hideLabel' | 'problem'
> {
  readonly value: T;
  /** How a person would write the value, unit included: `14 mm/s`. */
  readonly show: (value: T) => string;
  /** Reads what a person typed, in any unit that people write. */
  readonly parse: (text: string) => Outcome<T>;
  readonly onChange: (value: T) => void;
  /** Whether typing replaces what stands there: for one figure, not for a list that is added to. */
  readonly replaces?: boolean;
}

/**
 * One line, written as people write it. What was typed stays as typed until the field is left; a text that cannot be
 * read says why and changes nothing.
 */
export const TypedField = <T,>(props: TypedFieldProps<T>) => {
  const { value, show, parse, onChange, replaces = false, ...field } = props;
  const [typed, setTyped] = useState<string | undefined>(undefined);
  const entered = useReplaceable(replaces && typed === undefined ? show(value) : undefined);
  const read = typed === undefined ? undefined : parse(typed);
  const problem = read?.ok === false ? read.problem : undefined;
  return (
    <Field {...field} problem={problem ?? field.problem}>
      {(box) => (
        <input
          {...box}
          ref={entered}
          className="field-input figure-text"
          type="text"
          autoComplete="off"
          spellCheck={false}
          value={typed ?? show(value)}
          onChange={({ target }) => {
            setTyped(target.value);
            const outcome = parse(target.value);
            if (outcome.ok && outcome.value !== value) onChange(outcome.value);
          }}
          onFocus={({ target }) => {
            if (replaces) target.select();
          }}
          onBlur={() => {
            if (problem === undefined || (replaces && typed?.trim() === '')) setTyped(undefined);
          }}
        />
      )}
    </Field>
  );
};
