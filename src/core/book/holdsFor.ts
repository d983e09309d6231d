import { priors } from '../cutmodel/priors.ts';
import { powerLimit } from '../tube/deliveredPower.ts';
import type { Machine } from '../machine/machine.ts';
import { problemOf, type Carried, type Problem } from '../problem.ts';
import { findMaterial } from '../stock/materials.ts';
import type { Stock } from '../stock/stock.ts';
import { stockThicknessMm } from '../stock/stockThickness.ts';
import type { BookCode } from '../problems/book.ts';
import type { ProvenSetting } from './provenSetting.ts';

/** Below this share two thicknesses count as the same: a caliper in a workshop. Common practice, no source. */
const sameThicknessShare = 0.03;

/** The sheet at hand, and the machine that it lies on. */
export interface SheetAtHand {
  readonly stock: Stock;
  readonly machine: Machine;
  /** Absent: machines are told apart by their names. */
  readonly machineId?: string;
}

/**
 * In what the sheet and the machine at hand differ from what a proven setting holds for. Empty: its promise stands here
 * as it was made. A promise for a batch not seen yet minds no batch; only a promise for one sheet minds the sheet.
 */
export const holdsFor = (
  entry: ProvenSetting,
  { stock, machine, machineId }: SheetAtHand,
): readonly Problem[] => [
  ...aboutMachine(entry, machine, machineId),
  ...aboutMaterial(entry, stock),
  ...aboutThickness(entry, stock),
  ...aboutBatchAndSheet(entry, stock),
];

const difference = <Code extends BookCode>(
  code: Code,
  ...carried: Carried<Code>
): readonly Problem[] => [problemOf(code, ...carried)];

const aboutMachine = (
  { holdsFor: kept, setting }: ProvenSetting,
  machine: Machine,
  machineId: string | undefined,
): readonly Problem[] => {
  const [least, most] = machine.speedRangeMmPerS;
  const limitPct = powerLimit(machine).powerPct;
  const speed = setting.speedMmPerS;
  return [
    ...aboutWhichMachine(kept, machine.name, machineId),
    ...(setting.powerPct > limitPct
      ? difference('holds-for-power-above-limit', {
          powerPct: setting.powerPct,
          limitPct: Number(limitPct.toFixed(1)),
        })
      : []),
    ...(speed < least || speed > most
      ? difference('holds-for-speed-out-of-range', { speedMmPerS: speed, least, most })
      : []),
  ];
};

/** By the machine's id where both are known, else by its name. */
const aboutWhichMachine = (
  kept: ProvenSetting['holdsFor'],
  here: string | undefined,
  machineId: string | undefined,
): readonly Problem[] => {
  const isAnother =
    kept.machineId !== undefined && machineId !== undefined
      ? kept.machineId !== machineId
      : kept.machine !== undefined && here !== undefined && !sameText(kept.machine, here);
  if (!isAnother) return [];
  return kept.machine === undefined || here === undefined || sameText(kept.machine, here)
    ? difference('holds-for-another-machine')
    : difference('holds-for-other-machine', { kept: kept.machine, here });
};

const aboutMaterial = ({ holdsFor: kept }: ProvenSetting, stock: Stock): readonly Problem[] => {
  if (sameText(kept.material, stock.material)) return [];
  const keptClass = findMaterial(kept.material)?.id;
  const sameClass = keptClass !== undefined && keptClass === findMaterial(stock.material)?.id;
  return difference(sameClass ? 'holds-for-material-named-otherwise' : 'holds-for-other-material', {
    kept: kept.material,
    here: stock.material,
  });
};

/** By the label; and by the caliper where both were measured or the labels agree. */
const aboutThickness = ({ holdsFor: kept }: ProvenSetting, stock: Stock): readonly Problem[] => {
  const keptMm = kept.measuredThicknessMm ?? kept.nominalThicknessMm;
  const hereMm = stockThicknessMm(stock);
  if (Math.abs(hereMm / keptMm - 1) <= sameThicknessShare) return [];
  const speedShare = (keptMm / hereMm) ** priors.thicknessExponent.mean;
  const sameLabel =
    Math.abs(stock.nominalThicknessMm / kept.nominalThicknessMm - 1) <= sameThicknessShare;
  return difference(sameLabel ? 'holds-for-other-caliper' : 'holds-for-other-thickness', {
    keptMm: Number(keptMm.toFixed(2)),
    hereMm: Number(hereMm.toFixed(2)),
    speedChangePct: Math.round(100 * Math.abs(speedShare - 1)),
    which: speedShare < 1 ? 'slower' : 'faster',
  });
};

const aboutBatchAndSheet = (
  { holdsFor: kept, promise }: ProvenSetting,
  stock: Stock,
): readonly Problem[] => {
  if (promise.for === 'newBatch') return [];
  const batch =
    kept.batch === undefined || stock.batch === undefined
      ? difference('holds-for-batch-not-named')
      : sameText(kept.batch, stock.batch)
        ? []
        : difference('holds-for-other-batch', { kept: kept.batch, here: stock.batch });
  return promise.for === 'sheet' ? [...batch, ...aboutSheet(kept.sheet, stock.sheet)] : batch;
};

const aboutSheet = (kept: string | undefined, here: string | undefined): readonly Problem[] => {
  if (kept === undefined || here === undefined) return difference('holds-for-sheet-not-named');
  return sameText(kept, here) ? [] : difference('holds-for-other-sheet', { kept, here });
};

const sameText = (one: string, other: string): boolean => plain(one) === plain(other);

const plain = (text: string): string => text.trim().replace(/\s+/g, ' ').toLowerCase();
