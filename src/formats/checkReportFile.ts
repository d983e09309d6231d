import type { CheckReport } from '../core/filecheck/checkToolpath.ts';
import type { Toolpath } from '../core/filecheck/toolpath.ts';
import type { Problem } from '../core/problem.ts';

/** A problem in words, with what can be done about it. */
type SayInFull = (problem: Problem) => {
  readonly code: string;
  readonly message: string;
  readonly remedy: string;
};

/** What the check of a file found, as the command line and the server print it. */
export const checkReportFile = (
  { kind, report }: { readonly kind: Toolpath['kind']; readonly report: CheckReport },
  say: SayInFull,
) => ({
  kind,
  ok: report.ok,
  faults: report.findings.filter(({ severity }) => severity === 'fault').length,
  findings: report.findings.map((finding) => ({
    severity: finding.severity,
    ...say(finding),
    ...(finding.cell === undefined ? {} : { cell: finding.cell }),
    ...('where' in finding.params ? { where: finding.params.where } : {}),
  })),
  lines: report.lines,
  lengthMm: Number(report.lengthMm.toFixed(1)),
  ...(report.sizeMm === undefined
    ? {}
    : { sizeMm: report.sizeMm.map((mm) => Number(mm.toFixed(2))) }),
});
