import { useEffect, useRef } from 'react';
import type { SpoiltReason } from '../../../core/reading/grade.ts';
import type { FlawKind } from '../../../core/stock/flawKind.ts';
import { readingText as words } from '../../../words/texts.ts';
import { Action } from '../action/Action.tsx';

/** What of the sheet itself it may be: where it has neither glue pockets nor knots, any flaw is noted as the first. */
const ofTheSheet: Readonly<Record<FlawKind, readonly SpoiltReason[]>> = {
  'pocket-or-knot': ['glue-pocket', 'knot'],
  knot: ['knot'],
  flaw: ['glue-pocket'],
};
const others: readonly SpoiltReason[] = ['clip', 'lifted', 'slat', 'welded-back'];

/** As it is called where the sheet is of such material. */
export const reasonName = (reason: SpoiltReason, flaws: FlawKind): string =>
  flaws === 'flaw' && ofTheSheet.flaw.includes(reason) ? words.flaw : words.reasons[reason];

export interface SpoiltReasonsProps {
  readonly flaws: FlawKind;
  readonly onSay: (reason: SpoiltReason) => void;
  readonly onBack: () => void;
}

/** Why a cell says nothing about its setting. */
export const SpoiltReasons = ({ flaws, onSay, onBack }: SpoiltReasonsProps) => {
  const first = useRef<HTMLButtonElement>(null);
  useEffect(() => first.current?.focus(), []);
  return (
    <div className="strip-why" role="group" aria-label={words.spoiltWhy}>
      <p className="strip-more">{words.spoiltWhy}</p>
      <div className="strip-reasons">
        {[...ofTheSheet[flaws], ...others].map((reason, i) => (
          <button
            key={reason}
            ref={i === 0 ? first : undefined}
            type="button"
            className="strip-way"
            onClick={() => onSay(reason)}
          >
            {reasonName(reason, flaws)}
            <small>
              {reasonName(reason, flaws) === words.flaw ? words.flawMore : words.reasonMore[reason]}
            </small>
          </button>
        ))}
      </div>
      <Action kind="quiet" onPress={onBack}>
        {words.back}
      </Action>
    </div>
  );
};
