import type { Outcome } from '../../../core/problem.ts';
import { testShapeNames } from '../../../core/card/testShapes.ts';
import type { Setting } from '../../../core/machine/setting.ts';
import {
  lengthWords,
  powerWords,
  speedWords,
  describeText as words,
} from '../../../words/texts.ts';
import { Choice } from '../../parts/choice/Choice.tsx';
import { More } from '../../parts/more/More.tsx';
import { AirField } from '../../parts/quantity/AirField.tsx';
import { CountField } from '../../parts/quantity/CountField.tsx';
import { LinesField } from '../../parts/quantity/LinesField.tsx';
import { TypedField } from '../../parts/quantity/TypedField.tsx';
import { QuantityField } from '../../parts/quantity/QuantityField.tsx';
import { readList } from '../../parts/quantity/listReader.ts';
import { readSize, readCutPower, readCutSpeed } from '../../parts/quantity/readers.ts';
import { useDraft } from '../../state/useDraft.ts';
import { readSettingLines } from './lines.ts';
import type { Described, Description } from './useDescription.ts';

export interface CellsFormProps {
  /** What is typed is kept under it. */
  readonly name: string;
  readonly described: Described;
}

/** What stands on the card: its settings, how often each, and its shapes. */
export const CellsForm = ({ name, described }: CellsFormProps) => {
  const { description, change } = described;
  return (
    <div className="stack">
      <Choice
        label={words.laidOut}
        value={description.layout}
        options={(['crossed', 'listed'] as const).map((value) => ({
          value,
          label: words.layouts[value],
        }))}
        onChange={(layout) => change({ layout })}
      />
      {description.layout === 'crossed' ? (
        <div className="stack">
          <TypedField
            label={words.speeds}
            hint={words.speedsHint}
            value={description.speedsMmPerS}
            show={(values) => listWords(values, speedWords)}
            parse={readSpeeds}
            onChange={(speedsMmPerS) => change({ speedsMmPerS })}
          />
          <TypedField
            label={words.powers}
            hint={words.powersHint}
            value={description.powersPct}
            show={(values) => listWords(values, powerWords)}
            parse={readPowers}
            onChange={(powersPct) => change({ powersPct })}
          />
        </div>
      ) : (
        <SettingLines name={name} onChange={(settings) => change({ settings })} />
      )}
      <CountField
        label={words.each}
        value={description.each}
        least={1}
        most={12}
        onChange={(each) => change({ each })}
      />
      <ShapeForm described={described} />
      <div>
        <More title={words.air}>
          <AirField air={description.air} onChange={(air) => change({ air })} />
        </More>
      </div>
    </div>
  );
};

const readSpeeds = readList(readCutSpeed);
const readPowers = readList(readCutPower);

/** `10, 12, 14 mm/s`: the unit once, behind the last. */
const listWords = (values: readonly number[], one: (value: number) => string): string =>
  values
    .map((value, i) => (i < values.length - 1 ? (one(value).split('\u202f')[0] ?? '') : one(value)))
    .join(', ');

const SettingLines = ({
  name,
  onChange,
}: {
  readonly name: string;
  readonly onChange: (settings: readonly Setting[]) => void;
}) => {
  const [text, setText] = useDraft({ name: `describe.lines.${name}`, initial: '' });
  const read: Outcome<readonly Setting[]> = readSettingLines(text);
  return (
    <LinesField
      label={words.list}
      hint={words.listHint}
      value={text}
      problem={read.ok ? undefined : read.problem}
      onChange={(next) => {
        setText(next);
        const outcome = readSettingLines(next);
        if (outcome.ok) onChange(outcome.value);
      }}
    />
  );
};

/** Circles first: most cards in drawers have them. */
const shapesToName: readonly Description['shape'][] = [
  'circle',
  ...testShapeNames.filter((name) => name !== 'circle'),
  'other',
];

const ShapeForm = ({ described }: { readonly described: Described }) => {
  const { description, change } = described;
  return (
    <>
      <Choice<Description['shape']>
        label={words.shape}
        value={description.shape}
        options={shapesToName.map((value) => ({
          value,
          label: words.shapes[value],
        }))}
        onChange={(shape) => change({ shape })}
      />
      <div className="field-row">
        <QuantityField
          label={words.size}
          value={description.sizeMm}
          show={lengthWords}
          parse={readSize}
          onChange={(sizeMm) => {
            if (sizeMm !== undefined && sizeMm > 0) change({ sizeMm });
          }}
        />
        {description.shape === 'other' ? (
          <QuantityField
            label={words.cutLength}
            hint={words.cutLengthHint}
            value={description.otherLengthMm}
            show={lengthWords}
            parse={readSize}
            onChange={(otherLengthMm) => {
              if (otherLengthMm !== undefined && otherLengthMm > 0) change({ otherLengthMm });
            }}
          />
        ) : null}
      </div>
      {description.shape === 'circle' ? <p className="small soft">{words.circles}</p> : null}
    </>
  );
};
