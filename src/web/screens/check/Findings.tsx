import type { CheckReport } from '../../../core/filecheck/checkToolpath.ts';
import type { Outcome } from '../../../core/problem.ts';
import { checkText as words } from '../../../words/texts.ts';
import { Notice, ProblemNotice } from '../../parts/notice/Notice.tsx';
import { Section } from '../../parts/page/Page.tsx';
import { Said } from '../../parts/said/Said.tsx';

export interface FindingsProps {
  readonly name: string;
  readonly report: Outcome<CheckReport>;
}

/** What was found in a file: faults first. */
export const Findings = ({ name, report }: FindingsProps) => {
  if (!report.ok) return <ProblemNotice problem={report.problem} tone="stop" />;
  const { ok, findings, lines, lengthMm, sizeMm } = report.value;
  return (
    <Section title={name}>
      <div className="stack">
        <p>{words.read(lines, lengthMm, sizeMm)}</p>
        <Said what="answer">
          <Notice
            tone={ok ? 'say' : 'stop'}
            title={ok ? words.noFault : words.faults(faultsIn(findings))}
            isSaid
          >
            <p>{ok ? words.noFaultMore : words.faultsMore}</p>
          </Notice>
        </Said>
        {findings.map((finding, i) => (
          <ProblemNotice
            key={`${finding.code}${i}`}
            problem={finding}
            tone={finding.severity === 'fault' ? 'stop' : 'care'}
            isSaid
          />
        ))}
      </div>
    </Section>
  );
};

const faultsIn = (findings: CheckReport['findings']): number =>
  findings.filter(({ severity }) => severity === 'fault').length;
