import { useId, useState } from 'react';
import type { Setting } from '../../../core/machine/setting.ts';
import { SpeedAndPower, type SpokenSetting } from './SpeedAndPower.tsx';

export interface SettingFieldProps {
  readonly label: string;
  readonly hint?: string;
  readonly setting: Setting | undefined;
  /** A whole setting, or undefined while speed or power is missing. */
  readonly onChange: (setting: Setting | undefined) => void;
}

/** A speed with its power setting; counts once both are said. */
export const SettingField = ({ label, hint, setting, onChange }: SettingFieldProps) => {
  const [draft, setDraft] = useState<Partial<Setting>>(setting ?? {});
  const id = useId();
  const change = (part: SpokenSetting): void => {
    const { speedMmPerS, powerPct } = { ...draft, ...part };
    setDraft({
      ...(speedMmPerS === undefined ? {} : { speedMmPerS }),
      ...(powerPct === undefined ? {} : { powerPct }),
    });
    onChange(
      speedMmPerS === undefined || powerPct === undefined
        ? undefined
        : { passes: 1, ...setting, speedMmPerS, powerPct },
    );
  };
  return (
    <fieldset className="quantity" aria-describedby={hint === undefined ? undefined : id}>
      <legend className="field-label">{label}</legend>
      {hint === undefined ? null : (
        <p id={id} className="field-hint">
          {hint}
        </p>
      )}
      <div className="field-row">
        <SpeedAndPower {...draft} onChange={change} />
      </div>
    </fieldset>
  );
};
