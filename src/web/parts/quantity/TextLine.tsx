import { Field } from './Field.tsx';

export interface TextLineProps {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly hint?: string;
  readonly suggestions?: readonly string[];
  /** Figures alone: a phone shows its number keys. */
  readonly digits?: boolean;
}

/** One line of words, with suggestions where there are some. */
export const TextLine = ({
  label,
  value,
  onChange,
  hint,
  suggestions,
  digits = false,
}: TextLineProps) => (
  <Field label={label} hint={hint}>
    {(box) => (
      <>
        <input
          {...box}
          className="field-input"
          type="text"
          inputMode={digits ? 'numeric' : 'text'}
          autoComplete="off"
          maxLength={120}
          value={value}
          list={suggestions === undefined ? undefined : `${box.id}-list`}
          onChange={({ target }) => onChange(target.value)}
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
