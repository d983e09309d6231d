import type { Comparison } from '../../../core/compare/compareConditions.ts';
import { compareVerdictText as verdict, compareText as words } from '../../../words/texts.ts';
import { More } from '../../parts/more/More.tsx';
import { Section } from '../../parts/page/Page.tsx';
import { GainPicture } from './GainPicture.tsx';
import { ProblemNotice } from '../../parts/notice/Notice.tsx';
import { Settling } from './Settling.tsx';
import type { CompareDraft } from './sides.ts';
import { Said } from '../../parts/said/Said.tsx';

export interface CompareSaysProps {
  readonly comparison: Comparison;
  readonly draft: CompareDraft;
  /** Where a side's next card belongs. */
  readonly studyOf: (side: 'one' | 'other') => string;
}

/** What the two sides say together, what stands beside it, and what would settle it. */
export const CompareSays = ({ comparison, draft, studyOf }: CompareSaysProps) => {
  const usual = verdict.names(comparison);
  const names = {
    one: draft.nameOne.trim() === '' ? usual.one : draft.nameOne.trim(),
    other: draft.nameOther.trim() === '' ? usual.other : draft.nameOther.trim(),
  };
  const { read, remarks, exact, sheets, differs, convergence } = comparison;
  return (
    <>
      <Section title={words.answer}>
        <Said what="answer" className="compare-sentence">
          {verdict.sentence(comparison, names)}
        </Said>
        <GainPicture gainPct={comparison.gainPct} />
        <p>{verdict.standing(comparison)}</p>
        <p className="small soft">{words.read(names, read)}</p>
        {remarks.map((remark) => (
          <ProblemNotice key={remark.code} problem={remark} tone="care" />
        ))}
        <div>
          <More title={words.exactTitle}>
            <p>{verdict.exact(exact, names)}</p>
            <p className="small soft">
              {words.exactMore} {sheets === 'own' && differs !== 'batch' ? words.exactOwn : ''}
            </p>
          </More>
          <More title={words.statistics}>
            <p>{words.statisticsMore(convergence.effectivePoints)}</p>
          </More>
        </div>
      </Section>
      <Settling comparison={comparison} names={names} studyOf={studyOf} />
    </>
  );
};
