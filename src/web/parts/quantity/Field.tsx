import { useId, type ReactNode } from 'react';
import type { Problem } from '../../../core/problem.ts';
import { problemInWords } from '../../state/inWords.ts';
import './quantity.css';

/** What ties the box to its label and to what is said of it: to be spread on the box. */
export interface BoxProps {
  readonly id: string;
  readonly 'aria-invalid'?: true;
  readonly 'aria-describedby'?: string;
}

export interface FieldProps {
  readonly label: string;
  readonly hideLabel?: boolean;
  readonly hint?: string | undefined;
  /** Why what was typed cannot be taken; stands in the place of the hint. */
  readonly problem?: Problem | undefined;
  readonly children: (box: BoxProps) => ReactNode;
}

/** A label, a box, and below it a hint or what is wrong. */
export const Field = ({ label, hideLabel = false, hint, problem, children }: FieldProps) => {
  const id = useId();
  const said = problem === undefined ? undefined : problemInWords(problem);
  const note = said === undefined ? hint : `${said.message} ${said.remedy}`;
  return (
    <div className="quantity">
      <label htmlFor={id} className={hideLabel ? 'unseen' : 'field-label'}>
        {label}
      </label>
      {children({
        id,
        ...(said === undefined ? {} : { 'aria-invalid': true }),
        ...(note === undefined ? {} : { 'aria-describedby': `${id}-note` }),
      })}
      {note === undefined ? null : (
        <p
          id={`${id}-note`}
          className={said === undefined ? 'field-hint' : 'field-problem'}
          role={said === undefined ? undefined : 'alert'}
        >
          {note}
        </p>
      )}
    </div>
  );
};
