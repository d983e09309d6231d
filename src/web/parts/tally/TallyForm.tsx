import { useState } from 'react';
import type { Setting } from '../../../core/machine/setting.ts';
import type { PromiseWish } from '../../../core/reading/promise.ts';
import type { Tally } from '../../../core/reading/tally.ts';
import { lengthWords } from '../../../words/en/figures.ts';
import { tallyText as words } from '../../../words/en/screens/tally.ts';
import { Action } from '../action/Action.tsx';
import { QuantityField } from '../quantity/QuantityField.tsx';
import { readSize } from '../quantity/readers.ts';
import { SpeedAndPower, type SpokenSetting } from '../quantity/SpeedAndPower.tsx';
import { TextLine } from '../quantity/TextLine.tsx';
import { cameOut, noneCounted, TallyCounts } from './TallyCounts.tsx';

export interface TallyFormProps {
  readonly promise: PromiseWish;
  /** The setting that was run; absent: it is asked for. */
  readonly setting?: Setting;
  /** Deliveries that may be meant, the likeliest first; absent: nobody is asked. */
  readonly batches?: readonly string[];
  /** What the last order said. */
  readonly lastBatch?: string;
  readonly onSave: (tally: Tally) => void;
}

/** Counts an order: parts cut, and of those the ones that gave trouble. What remains came out. */
export const TallyForm = ({
  promise,
  setting,
  batches,
  lastBatch = '',
  onSave,
}: TallyFormProps) => {
  const [counts, setCounts] = useState(noneCounted);
  const [batch, setBatch] = useState(lastBatch);
  const [partLengthMm, setLength] = useState(promise.partLengthMm);
  const [spoken, setSpoken] = useState<SpokenSetting>(setting ?? {});
  const { speedMmPerS, powerPct } = spoken;
  const { cut, hangs, stays, spoilt } = counts;
  const out = cameOut(counts);
  const ran =
    speedMmPerS === undefined || powerPct === undefined
      ? undefined
      : (setting ?? { speedMmPerS, powerPct, passes: 1 });
  const save = (): void => {
    if (ran === undefined || out < 0 || cut === 0) return;
    const named = batch.trim() === '' ? {} : { batch: batch.trim() };
    onSave({ setting: ran, out, hangs, stays, spoilt, partLengthMm, ...named });
    setCounts(noneCounted);
  };
  return (
    <div className="stack">
      {setting === undefined ? (
        <div className="field-row">
          <SpeedAndPower
            speedMmPerS={speedMmPerS}
            powerPct={powerPct}
            labels={words}
            onChange={(part) => setSpoken((before) => ({ ...before, ...part }))}
          />
        </div>
      ) : (
        <p>{words.at(setting)}.</p>
      )}
      <TallyCounts counts={counts} onChange={setCounts} />
      <QuantityField
        label={words.length}
        value={partLengthMm}
        show={lengthWords}
        parse={readSize}
        onChange={(value) => {
          if (value !== undefined) setLength(value);
        }}
      />
      {batches === undefined ? null : (
        <TextLine
          label={words.batch}
          hint={words.batchHint}
          value={batch}
          suggestions={batches}
          onChange={setBatch}
        />
      )}
      <div className="actions">
        <Action onPress={save} isDisabled={ran === undefined || out < 0 || cut === 0}>
          {words.save}
        </Action>
      </div>
    </div>
  );
};
