import { useEffect, useRef, useState, type ReactNode } from 'react';
import './page.css';

export interface ScrollsProps {
  /** What is in it, for those who cannot see that it scrolls. */
  readonly label: string;
  readonly children: ReactNode;
}

/** What may be wider than the screen scrolls by itself, and not the page; keys reach it where it does. */
export const Scrolls = ({ label, children }: ScrollsProps) => {
  const box = useRef<HTMLDivElement>(null);
  const [isWider, setIsWider] = useState(false);
  useEffect(() => {
    const { current } = box;
    if (current === null || typeof ResizeObserver === 'undefined') return;
    const look = new ResizeObserver(() => setIsWider(current.scrollWidth > current.clientWidth));
    look.observe(current);
    return () => look.disconnect();
  }, []);
  return (
    <div
      ref={box}
      className="scrolls"
      {...(isWider ? { role: 'region', tabIndex: 0, 'aria-label': label } : {})}
    >
      {children}
    </div>
  );
};
