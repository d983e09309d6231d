import type { Study } from '../../../core/study/study.ts';
import type { Aim } from '../../../core/cutmodel/aims.ts';
import { answerText as words, powerWords } from '../../../words/texts.ts';
import type { HeadChange } from '../../state/change.ts';
import { Choice } from '../choice/Choice.tsx';
import { powersOf } from './powersOf.ts';

export interface AimChoiceProps {
  readonly study: Study;
  readonly onChange: (head: HeadChange) => void;
}

/** At which power setting the answer is wanted, and what is preferred where that is left open. */
export const AimChoice = ({ study, onChange }: AimChoiceProps) => {
  const powers = powersOf(study);
  const asked = study.ask.powerPct;
  return (
    <div className="stack">
      <Choice
        label={words.power}
        value={asked === undefined ? 'any' : String(asked)}
        options={[
          ...powers.map((power) => ({ value: String(power), label: powerWords(power) })),
          { value: 'any', label: words.anyPower },
        ]}
        onChange={(value) => onChange({ ask: value === 'any' ? {} : { powerPct: Number(value) } })}
      />
      {asked === undefined ? (
        <Choice<Aim>
          label={words.aim}
          value={study.aim}
          options={(['fastest', 'gentlest', 'cleanest'] as const).map((value) => ({
            value,
            label: words.aims[value],
            more: words.aimMore[value],
          }))}
          onChange={(aim) => onChange({ aim })}
        />
      ) : null}
    </div>
  );
};
