import { useId } from 'react';
import './quantity.css';

export interface TextLineProps {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly hint?: string;
  /** Ids of a list of suggestions. */
  readonly suggestions?: readonly string[];
}

/** One line of words, with suggestions where there are some. */
export const TextLine = ({ label, value, onChange, hint, suggestions }: TextLineProps) => {
  const id = useId();
  return (
    <div className="quantity">
      <label htmlFor={id} className="field-label">
        {label}
      </label>
      <input
        id={id}
        className="field-input"
        type="text"
        autoComplete="off"
        maxLength={120}
        value={value}
        list={suggestions === undefined ? undefined : `${id}-list`}
        aria-describedby={hint === undefined ? undefined : `${id}-hint`}
        onChange={(event) => onChange(event.target.value)}
      />
      {suggestions === undefined ? null : (
        <datalist id={`${id}-list`}>
          {suggestions.map((each) => (
            <option key={each} value={each} />
          ))}
        </datalist>
      )}
      {hint === undefined ? null : (
        <p id={`${id}-hint`} className="field-hint">
          {hint}
        </p>
      )}
    </div>
  );
};
