import { cardWorth, usualEffort } from '../../../core/cost/cardWorth.ts';
import type { NextCardAnswer } from '../../../core/cutmodel/fitAnswer.ts';
import { worthText as words } from '../../../words/texts.ts';
import { CountField } from '../../parts/quantity/CountField.tsx';

export interface CardPaysProps {
  readonly proposal: NextCardAnswer;
  readonly partLengthMm: number;
  readonly parts: number;
  readonly onParts: (parts: number) => void;
}

/** What another card takes and what it saves on the order that lies ahead: cut it, or leave it. */
export const CardPays = ({ proposal, partLengthMm, parts, onParts }: CardPaysProps) => {
  const worth = cardWorth(proposal, { parts, partLengthMm });
  if (worth === null) return null;
  const { secondsPerSetting, secondsPerCell, secondsPerCard } = usualEffort;
  return (
    <div className="stack">
      <div className="field-row">
        <CountField label={words.parts} value={parts} least={1} most={100_000} onChange={onParts} />
      </div>
      <p>{words.verdict(worth, proposal.expectedGainPct, parts)}</p>
      <p className="small soft">
        {words.assumed(secondsPerSetting, secondsPerCell, secondsPerCard)}
      </p>
    </div>
  );
};
