import type { Card } from '../card/card.ts';
import { energyCeiling } from '../card/ceiling.ts';
import type { Machine } from '../machine/machine.ts';
import { powerLimit } from '../machine/deliveredPower.ts';
import { boxAround, liesWithin } from '../path/box.ts';
import { energyOf, toldSetting, type ToldSetting } from './toldSetting.ts';
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

/** Whether every setting is one that the machine has, and that its tube bears. */
export const checkMachine = (toolpath: Toolpath, machine: Machine): readonly Finding[] => {
  const [least, most] = machine.speedRangeMmPerS;
  const limit = powerLimit(machine);
  return firstOfEach(
    toldLines(toolpath).flatMap(({ line, told }) => {
      const about = { where: line.where, ...cellParam(line) };
      const power = told.powerPct === undefined ? undefined : rounded(told.powerPct);
      return [
        ...(power !== undefined && power > machine.maxPowerPct
          ? [
              fault('check-power-above-machine', {
                ...about,
                powerPct: power,
                most: machine.maxPowerPct,
              }),
            ]
          : power !== undefined &&
              limit.because === 'rated-current' &&
              power > rounded(limit.powerPct)
            ? [
                fault('check-overdrives', {
                  ...about,
                  powerPct: power,
                  ratedPct: rounded(limit.powerPct),
                }),
              ]
            : []),
        ...(told.speedMmPerS < least - 1e-6 || told.speedMmPerS > most + 1e-6
          ? [
              fault('check-speed-beyond-machine', {
                ...about,
                speedMmPerS: rounded(told.speedMmPerS),
                least,
                most,
              }),
            ]
          : []),
      ];
    }),
  );
};

/** Marks at half the line energy of the gentlest cell, or more, may come through: then the card falls apart as it is marked. */
const marksShare = 0.5;

/**
 * Line energies against each other and against what was believed when the card was designed: cells that would burn
 * rather than teach, marks that would cut.
 */
export const checkEnergies = (
  toolpath: Toolpath,
  card: Card | undefined,
  isMark: (line: PathLine) => boolean,
): readonly Finding[] => {
  const all = toldLines(toolpath).flatMap(({ line, told }) => {
    const energy = energyOf(told);
    return energy === undefined ? [] : [{ line, energy }];
  });
  const marks = all.filter(({ line }) => isMark(line));
  const cells = all.filter(({ line }) => !isMark(line));
  const believed = card?.believed;
  const changeover = believed === undefined ? undefined : believed.powerPct / believed.v50MmPerS;
  const gentlest = cells.reduce(
    (least, { energy }) => Math.min(least, energy),
    changeover ?? Infinity,
  );
  const hot = marks.find(({ energy }) => energy >= marksShare * gentlest);
  return [
    ...(hot === undefined || !Number.isFinite(gentlest)
      ? []
      : [
          fault('check-marks-would-cut', {
            where: hot.line.where,
            sharePct: Math.round((100 * hot.energy) / gentlest),
          }),
        ]),
    ...(changeover === undefined
      ? []
      : firstOfEach(
          cells
            .filter(({ energy }) => energy > 1.001 * energyCeiling * changeover)
            .map(({ line, energy }) =>
              fault('check-above-energy-ceiling', {
                ...cellParam(line),
                where: line.where,
                times: rounded(energy / changeover),
              }),
            ),
        )),
  ];
};

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
  const over = lines.find(({ told }) => told !== undefined && told.s > sAtFullPower * 1.0001);
  if (over !== undefined) {
    const params = { s: over.told?.s ?? 0, full: sAtFullPower, where: over.where };
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

const sOf = ({ told }: PathLine): number => told?.s ?? 0;

/** No tube fires below some per cent of its power (common practice, no source): then S counts to another full power. */
const hardlyAny = 0.01;

const toldLines = (
  toolpath: Toolpath,
): readonly { readonly line: PathLine; readonly told: ToldSetting }[] =>
  toolpath.lines.flatMap((line) => {
    const told = toldSetting(toolpath, line);
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
