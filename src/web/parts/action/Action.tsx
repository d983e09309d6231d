import type { ReactNode } from 'react';
import { Button } from 'react-aria-components/Button';
import { Link } from 'wouter';
import './action.css';

/** strong: the one thing to do next. plain: another thing that can be done. quiet: small, beside what it belongs to. */
export type ActionKind = 'strong' | 'plain' | 'quiet';

export interface ActionProps {
  readonly kind?: ActionKind;
  readonly onPress: () => void;
  readonly isDisabled?: boolean;
  readonly label?: string;
  readonly children: ReactNode;
}

/** A button. At least 44 CSS pixels high whatever its kind. */
export const Action = ({
  kind = 'plain',
  onPress,
  isDisabled = false,
  label,
  children,
}: ActionProps) => (
  <Button
    className={`action action-${kind}`}
    onPress={onPress}
    isDisabled={isDisabled}
    {...(label === undefined ? {} : { 'aria-label': label })}
  >
    {children}
  </Button>
);

export interface ActionLinkProps {
  readonly kind?: ActionKind;
  readonly href: string;
  readonly children: ReactNode;
}

/** A link to another screen that looks like what it does. */
export const ActionLink = ({ kind = 'plain', href, children }: ActionLinkProps) => (
  <Link className={`action action-${kind}`} href={href}>
    {children}
  </Link>
);

export interface DownloadLinkProps {
  readonly href: string;
  readonly fileName: string;
  readonly children: ReactNode;
}

/** Saves a file. */
export const DownloadLink = ({ href, fileName, children }: DownloadLinkProps) => (
  <a className="action action-plain" href={href} download={fileName}>
    {children}
  </a>
);
