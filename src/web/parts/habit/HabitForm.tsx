import type { Habit } from '../../../core/reading/tally.ts';
import { powerWords, speedWords, habitText as words } from '../../../words/texts.ts';
import { Action } from '../action/Action.tsx';
import { Choice } from '../choice/Choice.tsx';
import { QuantityField } from '../quantity/QuantityField.tsx';
import { readCutPower, readCutSpeed } from '../quantity/readers.ts';
import { useDraft } from '../../state/useDraft.ts';

export interface HabitFormProps {
  /** Of what it is the habit: its draft is kept under that. */
  readonly name: string;
  readonly habit: Habit | undefined;
  /** A whole habit, or null when there is none any more. */
  readonly onChange: (habit: Habit | null) => void;
}

type Draft = Partial<Habit>;

/** What the workshop cuts it with now, and whether the parts come out. It counts as soon as all three are said. */
export const HabitForm = ({ name, habit, onChange }: HabitFormProps) => {
  const [draft, setDraft] = useDraft<Draft>({ name: `habit.${name}`, initial: habit ?? {} });
  const change = (part: Draft): void => {
    const next = { ...draft, ...part };
    setDraft(next);
    const whole = wholeHabit(next);
    if (whole !== undefined) onChange(whole);
  };
  return (
    <div className="stack">
      <div className="field-row">
        <QuantityField
          label={words.speed}
          value={draft.speedMmPerS}
          show={speedWords}
          parse={readCutSpeed}
          onChange={(speedMmPerS) => {
            if (speedMmPerS !== undefined) change({ speedMmPerS });
          }}
        />
        <QuantityField
          label={words.power}
          value={draft.powerPct}
          show={powerWords}
          parse={readCutPower}
          onChange={(powerPct) => {
            if (powerPct !== undefined) change({ powerPct });
          }}
        />
      </div>
      <Choice
        label={words.comesOut}
        value={draft.comesOut}
        options={(['always', 'nearly', 'often-not'] as const).map((value) => ({
          value,
          label: words.comes[value],
        }))}
        onChange={(comesOut) => change({ comesOut })}
      />
      {habit === undefined ? null : (
        <div className="actions">
          <Action
            kind="quiet"
            onPress={() => {
              setDraft({});
              onChange(null);
            }}
          >
            {words.takeBack}
          </Action>
        </div>
      )}
    </div>
  );
};

const wholeHabit = ({ powerPct, speedMmPerS, comesOut }: Draft): Habit | undefined =>
  powerPct === undefined || speedMmPerS === undefined || comesOut === undefined
    ? undefined
    : { powerPct, speedMmPerS, comesOut };
