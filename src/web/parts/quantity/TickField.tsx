import { useId } from 'react';
import './tick.css';

export interface TickFieldProps {
  readonly label: string;
  readonly hint?: string;
  readonly checked: boolean;
  readonly onChange: (checked: boolean) => void;
}

/** Something that a person names, or does not. */
export const TickField = ({ label, hint, checked, onChange }: TickFieldProps) => {
  const id = useId();
  return (
    <div>
      <label className="tick">
        <input
          type="checkbox"
          checked={checked}
          aria-describedby={hint === undefined ? undefined : id}
          onChange={({ target }) => onChange(target.checked)}
        />
        <span>{label}</span>
      </label>
      {hint === undefined ? null : (
        <p id={id} className="field-hint">
          {hint}
        </p>
      )}
    </div>
  );
};
