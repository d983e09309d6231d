import type { Card } from '../../core/card/card.ts';
import { checkToolpath, type CheckReport } from '../../core/filecheck/checkToolpath.ts';
import type { Toolpath } from '../../core/filecheck/toolpath.ts';
import { done, type Outcome } from '../../core/problem.ts';
import type { MachineFile } from '../../formats/machineFile.ts';
import { readToolpath } from '../../formats/readToolpath.ts';

/** A drawing or program to be checked, and what it is held against. */
export interface FileToCheck {
  readonly text: string;
  /** The card that it is to cut. */
  readonly card?: Card;
  readonly machine?: MachineFile;
}

export interface FileChecked {
  readonly kind: Toolpath['kind'];
  readonly report: CheckReport;
}

/**
 * Reads a drawing or program for what would go wrong, by itself, against its card, against the machine. Refuses: what
 * `readToolpath` refuses. It never says that a file is safe.
 */
export const checkFile = ({ text, card, machine }: FileToCheck): Outcome<FileChecked> => {
  const path = readToolpath(text);
  if (!path.ok) return path;
  const scale = machine?.sAtFullPower ?? path.value.sAtFullPower;
  const scaled = { ...path.value, ...(scale === undefined ? {} : { sAtFullPower: scale }) };
  const report = checkToolpath(scaled, {
    ...(card === undefined ? {} : { card }),
    ...(machine === undefined ? {} : { machine: machine.machine }),
  });
  return done({ kind: path.value.kind, report });
};
