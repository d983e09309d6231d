import { markKinds, tapeKinds } from '../../../core/marking/mark.ts';
import { settingKey, type Setting } from '../../../core/machine/setting.ts';
import { lengthWords, marksText as words } from '../../../words/texts.ts';
import { Choice } from '../../parts/choice/Choice.tsx';
import { More } from '../../parts/more/More.tsx';
import { AirField } from '../../parts/quantity/AirField.tsx';
import { QuantityField } from '../../parts/quantity/QuantityField.tsx';
import { readLineSpacing } from '../../parts/quantity/readers.ts';
import { SettingField } from '../../parts/quantity/SettingField.tsx';
import { TextLine } from '../../parts/quantity/TextLine.tsx';
import { withOptional } from '../../state/withOptional.ts';
import { spacingIn, type MarksDraft, type MarksKnown } from './marksDraft.ts';

export interface MarkFormProps {
  readonly name: string;
  readonly draft: MarksDraft;
  readonly known: MarksKnown;
  /** Whether what stands there is a guess to begin with. */
  readonly isGuess: boolean;
  readonly onChange: (part: Partial<MarksDraft>) => void;
}

/** What kind of mark, and its setting. */
export const MarkForm = ({ name, draft, known, isGuess, onChange }: MarkFormProps) => {
  const { kind } = draft;
  return (
    <>
      <Choice
        label={words.kind}
        hideLabel
        value={kind}
        options={markKinds.map((value) => ({ value, label: words.kinds[value] }))}
        onChange={(chosen) => onChange({ kind: chosen })}
      />
      {kind === 'tape' ? (
        <Choice
          label={words.tape}
          value={draft.tape ?? known.tape}
          options={tapeKinds.map((value) => ({ value, label: words.tapes[value] }))}
          onChange={(tape) => onChange({ tape })}
        />
      ) : (
        <DrawnFields {...{ name, draft, known, isGuess, onChange, kind }} />
      )}
      <TextLine
        label={words.note}
        hint={words.noteHint[kind]}
        value={draft.note}
        onChange={(note) => onChange({ note })}
      />
    </>
  );
};

const DrawnFields = ({
  name,
  draft,
  known,
  isGuess,
  onChange,
  kind,
}: MarkFormProps & { readonly kind: 'score' | 'engrave' }) => {
  const spacing = spacingIn(draft, known);
  const setting: Setting | undefined = draft[kind] ?? known[kind];
  // What the fields stood on: they are begun anew where something else is kept or proposed, not while they are typed into.
  const of = known[kind];
  const stood = `${kind}.${of === undefined ? '' : settingKey(of)}`;
  return (
    <>
      {kind === 'engrave' ? (
        <QuantityField
          label={words.lineSpacing}
          hint={words.lineSpacingHint(spacing)}
          value={spacing}
          show={lengthWords}
          parse={readLineSpacing}
          onChange={(lineSpacingMm) => {
            if (lineSpacingMm !== undefined) onChange({ lineSpacingMm });
          }}
        />
      ) : null}
      <SettingField
        key={stood}
        name={`marks.${name}.${stood}`}
        label={words.setting[kind]}
        {...(isGuess ? { hint: words.guess } : {})}
        setting={setting}
        onChange={(said) => onChange({ [kind]: said })}
      />
      {setting === undefined ? null : (
        <More title={words.air}>
          <AirField
            air={setting.air}
            onChange={(air) => onChange({ [kind]: withOptional(setting, 'air', air) })}
          />
        </More>
      )}
    </>
  );
};
