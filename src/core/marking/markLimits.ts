import type { BelievedChangeover } from '../card/cardRequest.ts';
import { firingProblem } from '../card/firingLimits.ts';
import type { Machine } from '../machine/machine.ts';
import type { Setting } from '../machine/setting.ts';
import type { Problem } from '../problem.ts';
import { stripChangeover } from '../study/stripChangeover.ts';
import type { StockOnMachine } from '../book/keptStock.ts';
import { besideCut } from './besideCut.ts';
import { linesOver, type Mark } from './mark.ts';

/** What a mark stands beside: a kept cut, its sheet, and the machine. */
export interface MarkSubject extends StockOnMachine {
  /** The kept setting that cuts the sheet. */
  readonly cut: Setting;
}

/** What is asked of marks beside a cut, with all that it depends on. */
export interface BesideCut extends Pick<MarkSubject, 'cut' | 'stock'> {
  readonly machine: Machine;
}

/** What a mark is held to. */
export interface MarkLimits {
  readonly machine: Machine;
  readonly believed: BelievedChangeover;
}

/** What marks beside a kept cut are held to: its machine, and where the sheet is believed to be cut through. */
export const limitsBeside = (
  { cut, stock }: Pick<MarkSubject, 'cut' | 'stock'>,
  machine: Machine,
): MarkLimits => {
  const { material, nominalThicknessMm, measuredThicknessMm = nominalThicknessMm } = stock;
  const expected = stripChangeover({ material, thicknessMm: measuredThicknessMm }, machine);
  return { machine, believed: besideCut(expected, cut, machine) };
};

/** A mark's setting with as many passes as burn each place of it: the lines of a filling overlap. */
export const burning = (mark: Exclude<Mark, { readonly kind: 'tape' }>): Setting =>
  mark.kind === 'score'
    ? mark.setting
    : { ...mark.setting, passes: mark.setting.passes * linesOver(mark.lineSpacingMm) };

/** The limit that a mark goes beyond: of the machine, of the tube, or that it may cut where it should only mark. */
export const markProblem = (mark: Mark, limits: MarkLimits): Problem | undefined =>
  mark.kind === 'tape' ? undefined : firingProblem('marks', burning(mark), limits);
