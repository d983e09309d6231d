import type { ReactNode } from 'react';

export interface FormProps {
  /** What the button does that submits, and so Enter in a field. It is not done while that button is off. */
  readonly onSend: () => void;
  readonly className?: string;
  readonly children: ReactNode;
}

/** Fields that are sent together. */
export const Form = ({ onSend, className = 'stack', children }: FormProps) => (
  <form
    className={className}
    onSubmit={(event) => {
      event.preventDefault();
      onSend();
    }}
  >
    {children}
  </form>
);
