import type { Air } from '../../../core/machine/air.ts';
import { pressureWords, airText as words } from '../../../words/texts.ts';
import { Choice } from '../choice/Choice.tsx';
import { QuantityField } from './QuantityField.tsx';
import { readPressure } from './readers.ts';

export interface AirFieldProps {
  readonly air: Air | undefined;
  readonly onChange: (air: Air | undefined) => void;
}

type Kind = 'unsaid' | 'off' | 'pump' | 'gauge';

const kindOf = (air: Air | undefined): Kind => {
  if (air === undefined) return 'unsaid';
  return typeof air === 'string' ? air : 'gauge';
};

/** What a regulator is often set to for wood. Common practice, no source. */
const usualKPa = 100;

/** Air assist: nobody noted it, off, a pump without a gauge, or the pressure at the regulator's gauge. */
export const AirField = ({ air, onChange }: AirFieldProps) => (
  <div className="stack">
    <Choice<Kind>
      label={words.air}
      value={kindOf(air)}
      options={(['unsaid', 'off', 'pump', 'gauge'] as const).map((value) => ({
        value,
        label: words.kinds[value],
      }))}
      onChange={(kind) => {
        if (kind === 'unsaid') onChange(undefined);
        else onChange(kind === 'gauge' ? { kPa: usualKPa } : kind);
      }}
    />
    {air === 'off' ? <p className="small">{words.offCare}</p> : null}
    {typeof air === 'object' ? (
      <QuantityField
        label={words.pressure}
        value={air.kPa}
        show={pressureWords}
        parse={readPressure}
        onChange={(kPa) => {
          if (kPa !== undefined) onChange({ kPa });
        }}
      />
    ) : null}
  </div>
);
