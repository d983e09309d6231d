import type { Setting } from '../../../core/machine/setting.ts';
import { lengthWords, cornersText as words } from '../../../words/texts.ts';
import { Section } from '../../parts/page/Page.tsx';
import { CountField } from '../../parts/quantity/CountField.tsx';
import { QuantityField } from '../../parts/quantity/QuantityField.tsx';
import { readSize } from '../../parts/quantity/readers.ts';
import { SettingField } from '../../parts/quantity/SettingField.tsx';
import { withOptional } from '../../state/withOptional.ts';
import type { CornersWish } from './cornersJob.ts';

export interface CornersFormProps {
  readonly wish: CornersWish;
  /** What is cut: the wished setting, or the one that was filled in. */
  readonly setting: Setting;
  readonly onChange: (wish: CornersWish) => void;
}

/** What is cut in the four corners. */
export const CornersForm = ({ wish, setting, onChange }: CornersFormProps) => {
  const length = (label: string, value: number, take: (mm: number) => CornersWish) => (
    <QuantityField
      label={label}
      value={value}
      show={lengthWords}
      parse={readSize}
      onChange={(mm) => {
        if (mm !== undefined && mm > 0) onChange(take(mm));
      }}
    />
  );
  const { bed, sizeMm, marginMm } = wish;
  return (
    <Section title={words.wish}>
      <div className="field-row">
        {length(words.bedWidth, bed.widthMm, (widthMm) => ({ ...wish, bed: { ...bed, widthMm } }))}
        {length(words.bedHeight, bed.heightMm, (heightMm) => ({
          ...wish,
          bed: { ...bed, heightMm },
        }))}
      </div>
      <div className="field-row">
        <CountField
          label={words.cellsEach}
          value={wish.cellsEach}
          least={2}
          most={24}
          onChange={(cellsEach) => onChange({ ...wish, cellsEach })}
        />
        {length(words.size, sizeMm, (mm) => ({ ...wish, sizeMm: mm }))}
        {length(words.margin, marginMm, (mm) => ({ ...wish, marginMm: mm }))}
      </div>
      <p className="small soft">{words.cellsEachMore}</p>
      <SettingField
        name="corners"
        label={words.setting}
        hint={words.settingMore}
        setting={setting}
        onChange={(own) => onChange(withOptional(wish, 'setting', own))}
      />
      <SettingField
        name="corners.scoring"
        label={words.scoring}
        hint={words.scoringMore}
        setting={wish.scoring}
        onChange={(scoring) => onChange(withOptional(wish, 'scoring', scoring))}
      />
    </Section>
  );
};
