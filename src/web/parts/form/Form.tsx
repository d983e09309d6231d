import type { ReactNode } from 'react';
import { goToRefusedField } from './refusedField.ts';

export interface FormProps {
  /** What the button does that submits, and so Enter in a field. It is not done while that button is off. */
  readonly onSend: () => void;
  readonly className?: string;
  readonly children: ReactNode;
}

/** Fields that are sent together, and only where none refuses what was typed into it. */
export const Form = ({ onSend, className = 'stack', children }: FormProps) => (
  <form
    className={className}
    onSubmit={(event) => {
      event.preventDefault();
      if (!goToRefusedField(event.currentTarget)) onSend();
    }}
  >
    {children}
  </form>
);
