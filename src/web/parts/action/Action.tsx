import type { ReactNode } from 'react';
import { Link } from 'wouter';
import { useMay, type Takes } from '../../state/role.ts';
import { goToRefusedField } from '../form/refusedField.ts';
import './action.css';

/** strong: the one thing to do next. plain: another thing that can be done. quiet: small, beside what it belongs to. */
export type ActionKind = 'strong' | 'plain' | 'quiet';

export interface ActionProps {
  readonly kind?: ActionKind;
  readonly onPress?: () => void;
  readonly isDisabled?: boolean;
  /** Sends the form that it stands in, which then says what that does: so that Enter in a field does the same. */
  readonly submits?: boolean;
  /** Keeps what the fields of its page say, outside a form: not where one of them refuses what was typed into it. */
  readonly keepsTyped?: boolean;
  readonly label?: string;
  /** The route that it leads to: it is not there for who may not call it. */
  readonly calls?: Takes | undefined;
  readonly children: ReactNode;
}

/** A button. At least 44 CSS pixels high whatever its kind. */
export const Action = ({
  kind = 'plain',
  onPress,
  isDisabled = false,
  submits = false,
  keepsTyped = false,
  label,
  calls,
  children,
}: ActionProps) =>
  useIsThere(calls) ? (
    <button
      type={submits ? 'submit' : 'button'}
      className={`action action-${kind}`}
      onClick={({ currentTarget }) => {
        if (!keepsTyped || !goToRefusedField(currentTarget.closest('main'))) onPress?.();
      }}
      disabled={isDisabled}
      aria-label={label}
    >
      {children}
    </button>
  ) : null;

export interface ActionLinkProps {
  readonly kind?: ActionKind;
  readonly href: string;
  readonly calls?: Takes | undefined;
  readonly children: ReactNode;
}

/** A link to another screen that looks like what it does. */
export const ActionLink = ({ kind = 'plain', href, calls, children }: ActionLinkProps) =>
  useIsThere(calls) ? (
    <Link className={`action action-${kind}`} href={href}>
      {children}
    </Link>
  ) : null;

const useIsThere = (calls: Takes | undefined): boolean => {
  const may = useMay();
  return calls === undefined || may(calls);
};
