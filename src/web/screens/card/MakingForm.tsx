import type { Machine } from '../../../core/machine/machine.ts';
import { lengthWords, cardText as words } from '../../../words/texts.ts';
import { AirField } from '../../parts/quantity/AirField.tsx';
import { QuantityField } from '../../parts/quantity/QuantityField.tsx';
import { readSize } from '../../parts/quantity/readers.ts';
import { SettingField } from '../../parts/quantity/SettingField.tsx';
import type { CardWish } from '../../state/designFor.ts';
import { rememberEntries } from '../../state/entriesAtMost.ts';
import { withOptional } from '../../state/withOptional.ts';
import { EntriesForm } from './EntriesForm.tsx';
import { ShapeChoice } from './ShapeChoice.tsx';

export interface MakingFormProps {
  readonly wish: CardWish;
  readonly machine: Machine;
  readonly onChange: (wish: CardWish) => void;
}

/** How the card is made: its shape and size, the piece it comes from, and how marks and outline are drawn. */
export const MakingForm = ({ wish, machine, onChange }: MakingFormProps) => {
  const change = (part: Partial<CardWish>): void => onChange({ ...wish, ...part });
  const [wide, high] = wish.sheetMm;
  const length = (label: string, value: number, take: (value: number) => void) => (
    <QuantityField
      label={label}
      value={value}
      show={lengthWords}
      parse={readSize}
      onChange={(given) => {
        if (given !== undefined && given > 0) take(given);
      }}
    />
  );
  return (
    <div className="stack">
      <ShapeChoice shape={wish.shape} onChange={(shape) => change({ shape })} />
      <div className="field-row">
        {length(words.size, wish.sizeMm, (sizeMm) => change({ sizeMm }))}
        {length(words.offcutWide, wide, (value) => change({ sheetMm: [value, high] }))}
        {length(words.offcutHigh, high, (value) => change({ sheetMm: [wide, value] }))}
      </div>
      <EntriesForm
        machine={machine}
        entries={wish.entriesAtMost}
        onChange={(entries) => {
          rememberEntries(entries);
          onChange(withOptional(wish, 'entriesAtMost', entries));
        }}
      />
      <AirField air={wish.air} onChange={(air) => onChange(withOptional(wish, 'air', air))} />
      <SettingField
        name={`scoring.${wish.code}`}
        label={words.scoring}
        setting={wish.scoring}
        onChange={(scoring) => onChange(withOptional(wish, 'scoring', scoring))}
      />
      <SettingField
        name={`trusted.${wish.code}`}
        label={words.trusted}
        hint={words.trustedHint}
        setting={wish.trusted}
        onChange={(trusted) => onChange(withOptional(wish, 'trusted', trusted))}
      />
    </div>
  );
};
