import { Label } from 'react-aria-components/Label';
import { RadioGroup } from 'react-aria-components/RadioGroup';
import { Option } from './Option.tsx';
import './choice.css';

export interface ChoiceOption<T extends string> {
  readonly value: T;
  readonly label: string;
  readonly more?: string;
}

export interface ChoiceProps<T extends string> {
  readonly label: string;
  readonly hideLabel?: boolean;
  readonly options: readonly ChoiceOption<T>[];
  readonly value: T | undefined;
  readonly onChange: (value: T) => void;
  /** row: side by side while there is room. list: one below the other, with room for a line of explanation. */
  readonly lay?: 'row' | 'list';
}

/** One of a few. The chosen one is marked by a filled dot and a heavy edge, not by colour alone. */
export const Choice = <T extends string>({
  label,
  hideLabel = false,
  options,
  value,
  onChange,
  lay = 'row',
}: ChoiceProps<T>) => (
  <RadioGroup
    className={`choice choice-${lay}`}
    value={value ?? null}
    onChange={(chosen) => {
      const option = options.find((each) => each.value === chosen);
      if (option !== undefined) onChange(option.value);
    }}
  >
    <Label className={hideLabel ? 'unseen' : 'field-label'}>{label}</Label>
    <div className="choice-options">
      {options.map((option) => (
        <Option key={option.value} value={option.value} className="choice-option">
          <span className="choice-dot" aria-hidden="true" />
          <span>
            <span className="choice-name">{option.label}</span>
            {option.more === undefined ? null : <span className="choice-more">{option.more}</span>}
          </span>
        </Option>
      ))}
    </div>
  </RadioGroup>
);
