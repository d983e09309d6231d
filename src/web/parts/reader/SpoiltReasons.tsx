import { useEffect, useRef } from 'react';
import type { SpoiltReason } from '../../../core/reading/grade.ts';
import { readingText as words } from '../../../words/en/screens/reading.ts';
import { Action } from '../action/Action.tsx';

const reasons: readonly SpoiltReason[] = [
  'glue-pocket',
  'knot',
  'clip',
  'lifted',
  'slat',
  'welded-back',
];

export interface SpoiltReasonsProps {
  readonly onSay: (reason: SpoiltReason) => void;
  readonly onBack: () => void;
}

/** Why a cell says nothing about its setting. */
export const SpoiltReasons = ({ onSay, onBack }: SpoiltReasonsProps) => {
  const first = useRef<HTMLButtonElement>(null);
  useEffect(() => first.current?.focus(), []);
  return (
    <div className="strip-why" role="group" aria-label={words.spoiltWhy}>
      <p className="strip-more">{words.spoiltWhy}</p>
      <div className="strip-reasons">
        {reasons.map((reason, i) => (
          <button
            key={reason}
            ref={i === 0 ? first : undefined}
            type="button"
            className="strip-way"
            onClick={() => onSay(reason)}
          >
            {words.reasons[reason]}
            <small>{words.reasonMore[reason]}</small>
          </button>
        ))}
      </div>
      <Action kind="quiet" onPress={onBack}>
        {words.back}
      </Action>
    </div>
  );
};
