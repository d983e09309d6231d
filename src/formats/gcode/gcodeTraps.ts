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
  const standing = dwells.find((dwell) => dwell.lit && dwell.seconds > 0);
  return [
    // With M4 a controller that knows lasers keeps rapid moves dark; with M3 many burn along.
    ...(burning === undefined
      ? []
      : [
          (burning.spindle === 3 ? fault : remark)('check-beam-on-in-travel', {
            where: burning.line,
          }),
        ]),
    ...(standing === undefined
      ? []
      : [fault('check-beam-on-standing', { where: standing.line, seconds: standing.seconds })]),
    ...(lit(final) ? [fault('check-beam-left-on')] : []),
  ];
};

const modeTraps = ({
  moves,
  declared,
  final,
  unknown,
  programEnd,
}: GcodeProgram): readonly Finding[] => {
  if (moves.length === 0) return [];
  const [first] = unknown;
  return [
    ...(declared.units ? [] : [remark('check-units-unsaid')]),
    ...(declared.distance ? [] : [remark('check-distance-unsaid')]),
    ...(final.distance === 'G91' ? [remark('check-left-relative')] : []),
    ...(final.units === 'G20' ? [remark('check-left-inches')] : []),
    ...(final.offsetMm.some((mm) => mm !== 0) ? [remark('check-offset-in-force')] : []),
    ...(programEnd === null ? [remark('check-program-unended')] : []),
    ...(first === undefined
      ? []
      : [
          remark('check-words-passed-over', {
            word: first.word,
            where: first.line,
            count: unknown.length,
          }),
        ]),
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
