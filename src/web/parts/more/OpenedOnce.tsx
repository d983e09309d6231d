import { useState } from 'react';
import type { MoreProps } from './More.tsx';
import './more.css';

/** What stands one click below the surface and is neither fetched nor reckoned before that click. */
export const OpenedOnce = ({ title, children }: Omit<MoreProps, 'startsOpen'>) => {
  const [wasOpened, setWasOpened] = useState(false);
  return (
    <details
      className="more"
      onToggle={({ currentTarget }) => {
        if (currentTarget.open) setWasOpened(true);
      }}
    >
      <summary className="more-title">{title}</summary>
      <div className="more-body">{wasOpened ? children : null}</div>
    </details>
  );
};
