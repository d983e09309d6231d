import type { Card } from '../card/card.ts';
import type { BelievedChangeover } from '../card/cardRequest.ts';
import { believedLaw } from '../card/believedLaw.ts';
import { beyondLimits, type BeyondLimit, type FiringLimits } from '../card/firingLimits.ts';
import { undescribedMachine, type Machine } from '../machine/machine.ts';
import { boxAround, liesWithin } from '../path/box.ts';
import { energyOf, fileSetting, type FileSetting } from './fileSetting.ts';
import { fault, remark, type Finding, type PathLine, type Toolpath } from './toolpath.ts';

/** Whether everything stays on the bed, and on the page that a drawing says it has. */
export const checkBounds = (
  toolpath: Toolpath,
  machine: Machine | undefined,
): readonly Finding[] => {
  const all = [...toolpath.lines.map(({ points }) => points), toolpath.travels];
  const box = boxAround(all);
  if (box === undefined) return [];
  const params = {
    left: rounded(box.leftMm),
    bottom: rounded(box.bottomMm),
    right: rounded(box.rightMm),
    top: rounded(box.topMm),
  };
  const beyond = (widthMm: number, heightMm: number): boolean =>
    !liesWithin(box, { leftMm: 0, bottomMm: 0, rightMm: widthMm, topMm: heightMm });
  const bed = machine?.bed;
  const { page } = toolpath;
  return [
    ...(bed !== undefined && beyond(bed.widthMm, bed.heightMm)
      ? [fault('check-outside-bed', { ...params, widthMm: bed.widthMm, heightMm: bed.heightMm })]
      : []),
    ...(page !== undefined && beyond(page.widthMm, page.heightMm)
      ? [fault('check-outside-page', { ...params, ...page })]
      : []),
  ];
};

/** What a file's settings are held to beside each other. */
export interface HeldTo {
  readonly card?: Card;
  readonly machine?: Machine;
  /** Where the changeover is believed to be, by who knows it better than the card. */
  readonly believed?: BelievedChangeover;
}

/** Whether every setting is one that the machine has, that its tube bears, and that the sheet bears. */
export const checkSettings = (
  toolpath: Toolpath,
  { card, machine, believed: known }: HeldTo,
  isMark: (line: PathLine) => boolean,
): readonly Finding[] => {
  const believed =
    known ??
    (card?.believed === undefined
      ? undefined
      : believedLaw(card.believed, machine ?? undescribedMachine));
  const limits: FiringLimits = {
    machine: machine ?? anyMachine,
    ...(believed === undefined ? {} : { believed }),
  };
  return [
    ...firstOfEach(
      toldLines(toolpath).flatMap(({ line, told }) => {
        const setting = { ...told, powerPct: told.powerPct ?? 0 };
        return beyondLimits(setting, isMark(line) ? 'marks' : 'through', limits)
          .filter(({ limit }) => limit !== 'would-cut' || machine !== undefined)
          .map((beyond) => {
            const found = findingOf(beyond, { where: line.where, ...cellParam(line) });
            const chosen = card?.overdrive === true && isCell(line);
            return chosen && beyond.limit === 'rated-current' ? { ...found, ...asRemark } : found;
          });
      }),
    ),
    ...(believed !== undefined && machine !== undefined
      ? []
      : checkMarksAgainstCells(toolpath, believed, isMark)),
  ];
};

/** Whether the file says that a line is a cell of a card: only there may a person choose overdrive. */
const isCell = ({ cell, spelt }: PathLine): boolean =>
  cell !== undefined || /^[A-Z]{1,2}$/.test(spelt?.label ?? '');

/** Of a machine that nobody named nothing is known but that its power is in per cent. */
const anyMachine = { maxPowerPct: Infinity, speedRangeMmPerS: [0, Infinity] } as const;
const asRemark = { severity: 'remark' } as const;

const findingOf = (
  beyond: BeyondLimit,
  about: { readonly where: number; readonly cell?: string },
): Finding => {
  switch (beyond.limit) {
    case 'machine': {
      const { most } = beyond;
      return fault('check-power-above-machine', {
        ...about,
        powerPct: rounded(beyond.powerPct),
        most,
      });
    }
    case 'rated-current': {
      const { ratedPct } = beyond;
      return fault('check-overdrives', { ...about, powerPct: rounded(beyond.powerPct), ratedPct });
    }
    case 'speed': {
      const { least, most } = beyond;
      return fault('check-speed-beyond-machine', {
        ...about,
        speedMmPerS: rounded(beyond.speedMmPerS),
        least,
        most,
      });
    }
    case 'energy':
      return fault('check-above-energy-ceiling', { ...about, times: beyond.times });
    case 'would-cut':
      return fault('check-marks-would-cut', {
        where: about.where,
        sharePct: Math.round(100 * beyond.times),
        of: 'changeover',
      });
  }
};

/** Marks at half the line energy of the gentlest cell, or more, may come through: then the card falls apart as it is marked. */
const marksShare = 0.5;

/** Where no machine says what it delivers, or nothing is believed of the sheet: marks against the gentlest that is cut. */
const checkMarksAgainstCells = (
  toolpath: Toolpath,
  believed: BelievedChangeover | undefined,
  isMark: (line: PathLine) => boolean,
): readonly Finding[] => {
  const all = toldLines(toolpath).flatMap(({ line, told }) => {
    const energy = energyOf(told);
    return energy === undefined ? [] : [{ line, energy }];
  });
  const marks = all.filter(({ line }) => isMark(line));
  const gentlest = all
    .filter(({ line }) => !isMark(line))
    .reduce(
      (least, { energy }) => Math.min(least, energy),
      believed === undefined ? Infinity : anyPowerPct / believed(anyPowerPct).v50MmPerS,
    );
  const hot = marks.find(({ energy }) => energy >= marksShare * gentlest);
  return hot === undefined || !Number.isFinite(gentlest)
    ? []
    : [
        fault('check-marks-would-cut', {
          where: hot.line.where,
          sharePct: Math.round((100 * hot.energy) / gentlest),
          of: 'cell',
        }),
      ];
};

/** The line energy of the changeover is much the same at any power. */
const anyPowerPct = 50;

/** Where S is not said to mean anything, nothing can be said of power, or only of one against the other. */
export const checkPowerScale = (
  toolpath: Toolpath,
  inferred: number | undefined,
): readonly Finding[] => {
  const { sAtFullPower, lines, kind } = toolpath;
  if (kind !== 'gcode' || lines.length === 0) return [];
  if (inferred !== undefined)
    return [remark('check-power-scale-inferred', { full: rounded(inferred) })];
  if (sAtFullPower === undefined) return [remark('check-power-scale-unknown')];
  const over = lines.find(
    ({ modal: told }) => told !== undefined && told.s > sAtFullPower * 1.0001,
  );
  if (over !== undefined) {
    const params = { s: sOf(over), full: sAtFullPower, where: over.where };
    return [fault('check-power-above-scale', { ...params, ...cellParam(over) })];
  }
  const strongest = lines.reduce((most, line) => (sOf(line) > sOf(most) ? line : most));
  return sOf(strongest) > hardlyAny * sAtFullPower
    ? []
    : [
        remark('check-power-hardly-any', {
          s: sOf(strongest),
          full: sAtFullPower,
          where: strongest.where,
        }),
      ];
};

const sOf = ({ modal: told }: PathLine): number => told?.s ?? 0;

/** No tube fires below some per cent of its power (common practice, no source): then S counts to another full power. */
const hardlyAny = 0.01;

const toldLines = (
  toolpath: Toolpath,
): readonly { readonly line: PathLine; readonly told: FileSetting }[] =>
  toolpath.lines.flatMap((line) => {
    const told = fileSetting(toolpath, line);
    return told === undefined ? [] : [{ line, told }];
  });

const cellParam = ({ cell }: PathLine): { readonly cell?: string } =>
  cell === undefined ? {} : { cell: cell.id };

/** One finding of a kind a cell. */
const firstOfEach = (findings: readonly Finding[]): readonly Finding[] => {
  const seen = new Set<string>();
  return findings.filter(({ code, cell }) => {
    const key = `${code} ${cell ?? ''}`;
    return !seen.has(key) && seen.add(key);
  });
};

const rounded = (value: number): number => Number(value.toFixed(2));
