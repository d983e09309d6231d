import type { Setting } from '../../../core/machine/setting.ts';
import type { Tally } from '../../../core/reading/tally.ts';
import { lengthWords, tallyText as words } from '../../../words/texts.ts';
import { Action } from '../action/Action.tsx';
import { Choice } from '../choice/Choice.tsx';
import { Form } from '../form/Form.tsx';
import { QuantityField } from '../quantity/QuantityField.tsx';
import { readSize } from '../quantity/readers.ts';
import { SpeedAndPower, type SpokenSetting } from '../quantity/SpeedAndPower.tsx';
import { TextLine } from '../quantity/TextLine.tsx';
import { useDraft } from '../../state/useDraft.ts';
import { cameOut, noneCounted, TallyCounts, type Counts } from './TallyCounts.tsx';

export interface TallyFormProps {
  /** Of what orders are counted, or which is put right: the draft is kept under that. */
  readonly name: string;
  /** What the sheet is made of. */
  readonly material: string;
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
  name,
  material,
  partLengthMm: knownLength,
  settings,
  batches,
  lastBatch = '',
  before,
  onSave,
}: TallyFormProps) => {
  const [draft, setDraft, sent] = useDraft<Draft>({
    name: `count.${name}`,
    initial: {
      counts: before === undefined ? noneCounted : countsOf(before),
      batch: before?.batch ?? lastBatch,
      ...(before === undefined ? {} : { length: before.partLengthMm }),
      spoken: {},
      place: 0,
    },
    of: [before, settings],
  });
  const change = (part: Partial<Draft>): void => setDraft({ ...draft, ...part });
  const { counts, batch, spoken, place } = draft;
  const partLengthMm = draft.length ?? knownLength;
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
    change({ counts: noneCounted });
    sent();
  };
  return (
    <Form onSend={save}>
      {settings === undefined ? (
        <div className="field-row">
          <SpeedAndPower
            speedMmPerS={speedMmPerS}
            powerPct={powerPct}
            labels={words}
            onChange={(part) => change({ spoken: { ...spoken, ...part } })}
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
          onChange={(value) => change({ place: Number(value) })}
        />
      )}
      <TallyCounts
        material={material}
        counts={counts}
        onChange={(next) => change({ counts: next })}
      />
      <QuantityField
        label={words.length}
        hint={words.lengthHint}
        value={partLengthMm}
        show={lengthWords}
        parse={readSize}
        onChange={(value) => {
          if (value !== undefined) change({ length: value });
        }}
      />
      {batches === undefined ? null : (
        <TextLine
          label={words.batch}
          hint={words.batchHint}
          value={batch}
          suggestions={batches}
          onChange={(next) => change({ batch: next })}
        />
      )}
      <div className="actions">
        <Action submits isDisabled={!isWhole}>
          {words.save}
        </Action>
      </div>
    </Form>
  );
};

interface Draft {
  readonly counts: Counts;
  readonly batch: string;
  /** As typed here; absent: as it is known. */
  readonly length?: number;
  readonly spoken: SpokenSetting;
  /** Which of the settings that may have been run. */
  readonly place: number;
}

const countsOf = ({ out, hangs, stays, spoilt }: Tally) => ({
  cut: out + hangs + stays + spoilt,
  hangs,
  stays,
  spoilt,
});
