import type { KerfResult } from '../../../core/kerf/tellKerf.ts';
import type { Outcome, Problem } from '../../../core/problem.ts';
import { kerfText as words } from '../../../words/texts.ts';
import { ProblemNotice } from '../../parts/notice/Notice.tsx';
import { Section } from '../../parts/page/Page.tsx';
import { Said } from '../../parts/said/Said.tsx';

export interface KerfFoundProps {
  /** Absent: nothing was measured yet. */
  readonly told: Outcome<KerfResult> | undefined;
  /** How it compares with what was kept of another batch. */
  readonly agreement: Problem | undefined;
}

/** The kerf with how sure it is, and by how much to draw larger. */
export const KerfFound = ({ told, agreement }: KerfFoundProps) => (
  <Section title={words.found}>
    {told === undefined ? (
      <p className="soft">{words.nothing}</p>
    ) : !told.ok ? (
      <ProblemNotice tone="care" problem={told.problem} />
    ) : told.value.kerf === undefined ? (
      <p className="soft">{words.nothing}</p>
    ) : (
      <>
        <Said what="answer" className="kerf-says">
          <p className="kerf-figure">{words.kerf(told.value.kerf)}</p>
          <p>{words.grow(told.value.kerf.kerfMm / 2)}</p>
          <p className="small soft">{words.growHole(told.value.kerf.kerfMm / 2)}</p>
        </Said>
        {agreement === undefined ? null : (
          <ProblemNotice
            tone={agreement.code === 'kerf-differs' ? 'care' : 'say'}
            problem={agreement}
          />
        )}
        {told.value.remarks
          .filter(({ code }) => code.startsWith('kerf-'))
          .map((remark) => (
            <ProblemNotice key={remark.code} tone="say" problem={remark} />
          ))}
      </>
    )}
  </Section>
);
