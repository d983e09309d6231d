import { useId } from 'react';
import type { Setting } from '../../../core/machine/setting.ts';
import { useDraft } from '../../state/useDraft.ts';
import { SpeedAndPower, type SpokenSetting } from './SpeedAndPower.tsx';

export interface SettingFieldProps {
  /** What is typed of it is kept under it. */
  readonly name: string;
  readonly label: string;
  readonly hint?: string;
  readonly setting: Setting | undefined;
  /** A whole setting, or undefined while speed or power is missing. */
  readonly onChange: (setting: Setting | undefined) => void;
}

/** A speed with its power setting; counts once both are said. */
export const SettingField = ({ name, label, hint, setting, onChange }: SettingFieldProps) => {
  const [typed, setTyped] = useDraft<Partial<Setting> | undefined>({
    name: `setting.${name}`,
    initial: undefined,
    of: setting ?? {},
  });
  // Until something is typed it shows what is filled in, however often that is reckoned anew.
  const draft = typed ?? setting ?? {};
  const id = useId();
  const change = (part: SpokenSetting): void => {
    const { speedMmPerS, powerPct } = { ...draft, ...part };
    setTyped({
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
