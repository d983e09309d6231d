import { fault, remark, type Finding, type PathLine } from '../../core/filecheck/toolpath.ts';
import type { GcodeMove, GcodeProgram } from './gcodeProgram.ts';

/** What a program leaves to chance: modes that it does not say, a beam that stays on, settings taken over by accident. */
export const gcodeTraps = (
  program: GcodeProgram,
  lines: readonly PathLine[],
): readonly Finding[] => [
  ...beamTraps(program),
  ...modeTraps(program),
  ...inheritedSettings(program, lines),
];

const lit = ({ spindle, s }: Pick<GcodeMove, 'spindle' | 's'>): boolean => spindle !== 5 && s > 0;

const beamTraps = ({ moves, dwells, final }: GcodeProgram): readonly Finding[] => {
  const burning = moves.find((move) => move.type === 'rapid' && lit(move) && move.lengthMm > 0);
  const waiting = dwells.find((dwell) => dwell.lit && dwell.seconds > 0);
  const standing = moves.find(standsLit);
  const cuts = moves.filter((move) => move.type !== 'rapid' && lit(move));
  const [first] = cuts;
  const other = cuts.find(({ spindle }) => spindle !== first?.spindle);
  return [
    // With M4 a controller that knows lasers keeps rapid moves dark; with M3 many burn along.
    ...(burning === undefined
      ? []
      : [
          (burning.spindle === 3 ? fault : remark)('check-beam-on-in-travel', {
            where: burning.line,
          }),
        ]),
    ...(waiting === undefined
      ? []
      : [fault('check-beam-on-standing', { where: waiting.line, seconds: waiting.seconds })]),
    ...(standing === undefined
      ? []
      : [
          fault('check-beam-on-standing', {
            where: standing.line,
            seconds: Number((60 * standing.minutes).toFixed(1)),
          }),
        ]),
    ...(other === undefined ? [] : [remark('check-beam-modes-mixed', { where: other.line })]),
    ...(lit(final) ? [fault('check-beam-left-on')] : []),
  ];
};

/** A head that goes only up or down, or takes its time for no way at all, burns on the spot. */
const standsLit = (move: GcodeMove): boolean => {
  const [dx, dy] = [move.end[0] - move.start[0], move.end[1] - move.start[1]];
  return (
    move.type === 'line' && lit(move) && Math.hypot(dx, dy) < 1e-6 && 60 * move.minutes > leastS
  );
};

/** Shorter than this nobody sees a spot, s. */
const leastS = 0.05;

const modeTraps = (program: GcodeProgram): readonly Finding[] => {
  const { moves, declared, final, unknown, programEnd, zeroes, unitsChange } = program;
  if (moves.length === 0) return [];
  const [passed] = unknown;
  const [zero] = zeroes;
  const counted = (all: typeof unknown, { word, line }: (typeof unknown)[number]) => ({
    word,
    where: line,
    count: all.length,
  });
  return [
    ...(declared.units ? [] : [remark('check-units-unsaid')]),
    ...(declared.distance ? [] : [remark('check-distance-unsaid')]),
    ...(unitsChange === null ? [] : [remark('check-units-mixed', { where: unitsChange })]),
    ...(final.distance === 'G91' ? [remark('check-left-relative')] : []),
    ...(final.units === 'G20' ? [remark('check-left-inches')] : []),
    ...(final.offsetMm.some((mm) => mm !== 0) ? [remark('check-offset-in-force')] : []),
    ...(zero === undefined ? [] : [remark('check-zero-moved', counted(zeroes, zero))]),
    ...(programEnd === null ? [remark('check-program-unended')] : []),
    ...(passed === undefined ? [] : [remark('check-words-passed-over', counted(unknown, passed))]),
  ];
};

/** A section or cell that says neither F nor S of its own is cut with whatever came before: a trap when lines are moved. */
const inheritedSettings = (
  { saysFeed, saysPower }: GcodeProgram,
  lines: readonly PathLine[],
): readonly Finding[] => {
  const seen = new Set<string>();
  for (const line of lines) {
    const name = line.cell?.id ?? line.layer;
    if (name === undefined || seen.has(name)) continue;
    seen.add(name);
    const says = (lineNumbers: ReadonlySet<number>): boolean =>
      [0, 1, 2, 3].some((above) => lineNumbers.has(line.where - above));
    if (!says(saysFeed) || !says(saysPower)) {
      return [
        remark('check-setting-inherited', {
          ...(line.cell === undefined ? {} : { cell: line.cell.id }),
          where: line.where,
        }),
      ];
    }
  }
  return [];
};
