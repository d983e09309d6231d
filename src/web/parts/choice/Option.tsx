import type { ReactNode } from 'react';
import { RadioButton, RadioField } from 'react-aria-components/RadioGroup';
import './choice.css';

export interface OptionProps {
  readonly value: string;
  readonly className: string;
  readonly children: ReactNode;
}

/** One of the things to choose from, all of it to be tapped. */
export const Option = ({ value, className, children }: OptionProps) => (
  <RadioField value={value} className="choice-field">
    <RadioButton className={className}>{children}</RadioButton>
  </RadioField>
);
