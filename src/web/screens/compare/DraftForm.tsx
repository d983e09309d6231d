import type { Comparison } from '../../../core/compare/compareConditions.ts';
import type { PieceRead } from '../../../core/compare/pieces.ts';
import { differences } from '../../../core/compare/twoConditions.ts';
import type { Outcome } from '../../../core/problem.ts';
import { compareVerdictText, compareText as words } from '../../../words/texts.ts';
import { Choice } from '../../parts/choice/Choice.tsx';
import { More } from '../../parts/more/More.tsx';
import { CountField } from '../../parts/quantity/CountField.tsx';
import { TextLine } from '../../parts/quantity/TextLine.tsx';
import { differsOf, type CompareDraft } from './sides.ts';

export interface DraftFormProps {
  readonly pieces: readonly PieceRead[];
  readonly draft: CompareDraft;
  readonly comparison: Outcome<Comparison> | undefined;
  readonly onChange: (draft: CompareDraft) => void;
}

/** What differs, whether one sheet was cut, and what the two are called. */
export const DraftForm = ({ pieces, draft, comparison, onChange }: DraftFormProps) => {
  const differs = differsOf(pieces, draft);
  const usual = comparison?.ok === true ? compareVerdictText.names(comparison.value) : undefined;
  const hint = (name: string | undefined) =>
    name === undefined ? {} : { hint: words.usually(name) };
  return (
    <div className="stack">
      <Choice
        label={words.differsAsk}
        value={differs}
        options={differences.map((value) => ({ value, label: words.differs[value] }))}
        onChange={(value) => onChange({ ...draft, differs: value })}
      />
      {differs === 'batch' ? null : (
        <Choice
          label={words.oneSheetAsk}
          value={draft.oneSheet ? 'yes' : 'no'}
          options={(['yes', 'no'] as const).map((value) => ({
            value,
            label: words.oneSheet[value],
          }))}
          onChange={(value) => onChange({ ...draft, oneSheet: value === 'yes' })}
        />
      )}
      <More title={words.nameThem}>
        <div className="field-row">
          <TextLine
            label={words.nameOne}
            value={draft.nameOne}
            {...hint(usual?.one)}
            onChange={(nameOne) => onChange({ ...draft, nameOne })}
          />
          <TextLine
            label={words.nameOther}
            value={draft.nameOther}
            {...hint(usual?.other)}
            onChange={(nameOther) => onChange({ ...draft, nameOther })}
          />
        </div>
        <div className="field-row">
          <CountField
            label={words.worth}
            value={draft.worthPct}
            least={0}
            most={20}
            onChange={(worthPct) => onChange({ ...draft, worthPct })}
          />
          <CountField
            label={words.tell}
            value={draft.tellPct}
            least={1}
            most={30}
            onChange={(tellPct) => onChange({ ...draft, tellPct })}
          />
        </div>
      </More>
    </div>
  );
};
