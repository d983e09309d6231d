import { useState } from 'react';
import type { Setting } from '../../../core/machine/setting.ts';
import type { Tally } from '../../../core/reading/tally.ts';
import { lengthWords } from '../../../words/en/figures.ts';
import { tallyText as words } from '../../../words/en/screens/tally.ts';
import { Action } from '../action/Action.tsx';
import { Choice } from '../choice/Choice.tsx';
import { QuantityField } from '../quantity/QuantityField.tsx';
import { readSize } from '../quantity/readers.ts';
import { SpeedAndPower, type SpokenSetting } from '../quantity/SpeedAndPower.tsx';
import { TextLine } from '../quantity/TextLine.tsx';
import { cameOut, noneCounted, TallyCounts } from './TallyCounts.tsx';

export interface TallyFormProps {
  /** Of the part that is cut; undefined: nobody said yet, and it is asked for. */
  readonly partLengthMm: number | undefined;
  /** Settings that may have been run, the likeliest first; absent: it is asked for. */
  readonly settings?: readonly Setting[];
  /** Deliveries that may be meant, the likeliest first; absent: nobody is asked. */
  readonly batches?: readonly string[];
  /** What the last order said. */
  readonly lastBatch?: string;
  /** A count that was mistyped: it is put right here. */
  readonly before?: Tally;
  readonly onSave: (tally: Tally) => void;
}

/** Counts an order: parts cut, and of those the ones that gave trouble. What remains came out. */
export const TallyForm = ({
  partLengthMm: knownLength,
  settings,
  batches,
  lastBatch = '',
  before,
  onSave,
}: TallyFormProps) => {
  const [counts, setCounts] = useState(() =>
    before === undefined ? noneCounted : countsOf(before),
  );
  const [batch, setBatch] = useState(before?.batch ?? lastBatch);
  const [typedLength, setLength] = useState(before?.partLengthMm);
  const partLengthMm = typedLength ?? knownLength;
  const [spoken, setSpoken] = useState<SpokenSetting>({});
  const [place, setPlace] = useState(0);
  const { speedMmPerS, powerPct } = spoken;
  const { cut, hangs, stays, spoilt } = counts;
  const out = cameOut(counts);
  const ran =
    settings?.[place] ??
    (speedMmPerS === undefined || powerPct === undefined
      ? undefined
      : { speedMmPerS, powerPct, passes: 1 });
  const isWhole = ran !== undefined && partLengthMm !== undefined && out >= 0 && cut > 0;
  const save = (): void => {
    if (ran === undefined || partLengthMm === undefined || out < 0 || cut === 0) return;
    const named = batch.trim() === '' ? {} : { batch: batch.trim() };
    onSave({ setting: ran, out, hangs, stays, spoilt, partLengthMm, ...named });
    setCounts(noneCounted);
  };
  return (
    <form
      className="stack"
      onSubmit={(event) => {
        event.preventDefault();
        save();
      }}
    >
      {settings === undefined ? (
        <div className="field-row">
          <SpeedAndPower
            speedMmPerS={speedMmPerS}
            powerPct={powerPct}
            labels={words}
            onChange={(part) => setSpoken((known) => ({ ...known, ...part }))}
          />
        </div>
      ) : settings.length === 1 ? (
        <p>{ran === undefined ? '' : `${words.at(ran)}.`}</p>
      ) : (
        <Choice
          label={words.which}
          lay="list"
          value={String(place)}
          options={settings.map((setting, i) => ({ value: String(i), label: words.at(setting) }))}
          onChange={(value) => setPlace(Number(value))}
        />
      )}
      <TallyCounts counts={counts} onChange={setCounts} />
      <QuantityField
        label={words.length}
        hint={words.lengthHint}
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
        <Action submits isDisabled={!isWhole}>
          {words.save}
        </Action>
      </div>
    </form>
  );
};

const countsOf = ({ out, hangs, stays, spoilt }: Tally) => ({
  cut: out + hangs + stays + spoilt,
  hangs,
  stays,
  spoilt,
});
