import { useState } from 'react';
import { actionText as words } from '../../../words/texts.ts';
import type { Takes } from '../../state/role.ts';
import { Action } from './Action.tsx';

export interface SureActionProps {
  /** What it does, and what goes with it. */
  readonly ask: string;
  readonly onPress: () => void;
  /** As of any button. */
  readonly calls?: Takes;
  readonly children: string;
}

/** A quiet button for what cannot be taken back: it asks once more, in its own place. */
export const SureAction = ({ ask, onPress, calls, children }: SureActionProps) => {
  const [asking, setAsking] = useState(false);
  if (!asking)
    return (
      <Action kind="quiet" calls={calls} onPress={() => setAsking(true)}>
        {children}
      </Action>
    );
  return (
    <div className="sure" role="group" aria-label={children}>
      <p>{ask}</p>
      <div className="actions">
        <Action onPress={onPress}>{words.sure}</Action>
        <Action kind="quiet" onPress={() => setAsking(false)}>
          {words.unsure}
        </Action>
      </div>
    </div>
  );
};
