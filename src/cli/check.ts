import type { Card } from '../core/card/card.ts';
import { checkToolpath, type CheckReport } from '../core/filecheck/checkToolpath.ts';
import type { Toolpath } from '../core/filecheck/toolpath.ts';
import { done, type Outcome } from '../core/problem.ts';
import { parseCardFile } from '../formats/cardFile.ts';
import type { MachineFile } from '../formats/machineFile.ts';
import { problemInWords } from '../words/words.ts';
import { printJson, printRefusal, type ExitCode } from './output.ts';
import { readDrawing } from './readDrawing.ts';
import { readMachine, readNamed } from './readNamed.ts';

interface CheckOptions {
  readonly card?: string;
  readonly machine?: string;
}

/**
 * `check FILE [--card card.json] [--machine machine.json]`: reads a drawing or program for what would go wrong. Ends
 * with 1 where it finds faults. It never says that a file is safe.
 */
export const runCheck = async (file: string, options: CheckOptions): Promise<ExitCode> => {
  const checked = await check(file, options);
  if (!checked.ok) return printRefusal(checked.problem);
  const { toolpath, report } = checked.value;
  printJson(shown(file, toolpath, report));
  return report.ok ? 0 : 1;
};

const check = async (
  file: string,
  options: CheckOptions,
): Promise<Outcome<{ readonly toolpath: Toolpath; readonly report: CheckReport }>> => {
  const card = await readNamed(options.card, parseCardFile);
  if (!card.ok) return card;
  const machine = await readMachine(options.machine);
  if (!machine.ok) return machine;
  const toolpath = await readDrawing(file);
  if (!toolpath.ok) return toolpath;
  const scale = machine.value?.sAtFullPower ?? toolpath.value.sAtFullPower;
  const scaled = { ...toolpath.value, ...(scale === undefined ? {} : { sAtFullPower: scale }) };
  const against: { card?: Card; machine?: MachineFile['machine'] } = {
    ...(card.value === undefined ? {} : { card: card.value }),
    ...(machine.value === undefined ? {} : { machine: machine.value.machine }),
  };
  return done({ toolpath: scaled, report: checkToolpath(scaled, against) });
};

const shown = (file: string, { kind }: Toolpath, report: CheckReport): object => ({
  version: 1,
  file,
  kind,
  ok: report.ok,
  faults: report.findings.filter(({ severity }) => severity === 'fault').length,
  findings: report.findings.map((finding) => ({
    severity: finding.severity,
    ...problemInWords(finding),
    ...(finding.cell === undefined ? {} : { cell: finding.cell }),
    ...(finding.params['where'] === undefined ? {} : { where: finding.params['where'] }),
  })),
  lines: report.lines,
  lengthMm: Number(report.lengthMm.toFixed(1)),
  ...(report.sizeMm === undefined
    ? {}
    : { sizeMm: report.sizeMm.map((mm) => Number(mm.toFixed(2))) }),
});
