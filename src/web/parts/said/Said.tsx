import type { ReactNode } from 'react';

export interface SaidProps {
  /** answer: to the question of this screen. done: that what the person just did is done. wrong: that
   * it cannot be; a refusal that stands for itself is a `Notice` that stops. */
  readonly what: 'answer' | 'done' | 'wrong';
  readonly className?: string;
  /** A newer one is being worked out. */
  readonly isBehind?: boolean;
  readonly children: ReactNode;
}

/**
 * What a screen reader reads out by itself as it changes. Nothing else does: where progress, hints and whatever merely
 * loads spoke up too, the answer would be lost among them.
 */
export const Said = ({ what, className, isBehind = false, children }: SaidProps) => (
  <div role="status" data-said={what} className={className} aria-busy={isBehind}>
    {children}
  </div>
);
