import { checkedRamp, rampAbout, type FocusRamp } from '../../../core/focus/focusRamp.ts';
import { lengthWords, focusText as words } from '../../../words/texts.ts';
import { Action } from '../../parts/action/Action.tsx';
import { ProblemNotice } from '../../parts/notice/Notice.tsx';
import { Section } from '../../parts/page/Page.tsx';
import { QuantityField } from '../../parts/quantity/QuantityField.tsx';
import { readLength } from '../../parts/quantity/readers.ts';
import type { FocusDraft } from './focusDraft.ts';
import { RampPicture } from './RampPicture.tsx';

export interface RampFormProps {
  readonly draft: FocusDraft;
  readonly onChange: (part: Partial<FocusDraft>) => void;
}

/** How strip, block and nozzle stand; what would meet the nozzle is refused here, before anything is drawn. */
export const RampForm = ({ draft, onChange }: RampFormProps) => {
  const { ramp, gaugeMm } = draft;
  const checked = checkedRamp(ramp);
  const field = (label: string, part: keyof FocusRamp) => (
    <QuantityField
      label={label}
      value={ramp[part]}
      show={lengthWords}
      parse={readLength}
      onChange={(mm) => {
        if (mm !== undefined) onChange({ ramp: { ...ramp, [part]: mm } });
      }}
    />
  );
  return (
    <Section title={words.ramp}>
      <p className="soft">{words.rampMore}</p>
      <QuantityField
        label={words.gauge}
        hint={words.gaugeHint}
        optional
        value={gaugeMm}
        show={lengthWords}
        parse={readLength}
        onChange={(mm) => onChange({ gaugeMm: mm })}
      />
      {gaugeMm === undefined ? null : (
        <Suggestion gaugeMm={gaugeMm} ramp={ramp} onTake={(next) => onChange({ ramp: next })} />
      )}
      <div className="field-row">
        {field(words.length, 'lengthMm')}
        {field(words.block, 'blockMm')}
        {field(words.nozzleGap, 'nozzleGapMm')}
      </div>
      {checked.ok ? (
        <RampPicture ramp={ramp} />
      ) : (
        <ProblemNotice tone="stop" problem={checked.problem} />
      )}
    </Section>
  );
};

interface SuggestionProps {
  readonly gaugeMm: number;
  readonly ramp: FocusRamp;
  readonly onTake: (ramp: FocusRamp) => void;
}

const Suggestion = ({ gaugeMm, ramp, onTake }: SuggestionProps) => {
  const about = rampAbout(gaugeMm, ramp.lengthMm);
  if (!about.ok) return <ProblemNotice tone="say" problem={about.problem} />;
  const { blockMm, nozzleGapMm } = about.value;
  if (blockMm === ramp.blockMm && nozzleGapMm === ramp.nozzleGapMm) return null;
  return (
    <div className="actions">
      <Action onPress={() => onTake(about.value)}>{words.suggest(blockMm, nozzleGapMm)}</Action>
    </div>
  );
};
