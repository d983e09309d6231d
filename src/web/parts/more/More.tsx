import type { ReactNode } from 'react';
import './more.css';

export interface MoreProps {
  readonly title: string;
  readonly children: ReactNode;
  readonly startsOpen?: boolean;
}

/** What stands one click below the surface. */
export const More = ({ title, children, startsOpen = false }: MoreProps) => (
  <details className="more" open={startsOpen}>
    <summary className="more-title">{title}</summary>
    <div className="more-body">{children}</div>
  </details>
);
