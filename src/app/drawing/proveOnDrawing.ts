import type { CutStudy } from '../../core/cutmodel/cutStudy.ts';
import { answerFrom } from '../../core/cutmodel/fitStudy.ts';
import type { Finding, PathLine, Toolpath } from '../../core/filecheck/toolpath.ts';
import type { Setting } from '../../core/machine/setting.ts';
import { lengthMm } from '../../core/path/polyline.ts';
import { done, refused, type Outcome, type Problem } from '../../core/problem.ts';
import { drawnLines } from '../../core/filecheck/drawnLines.ts';
import { proveDrawing, type DrawingProof, type ProofStage } from '../../core/proof/proveDrawing.ts';
import { acceptMaterial } from '../../core/stock/acceptMaterial.ts';
import { fitWithEarlier } from '../../core/study/answerWithEarlier.ts';
import type { EarlierSheet } from '../../core/study/earlierSheet.ts';
import { heldBackBy } from '../../core/study/settingHeldBack.ts';
import { readToolpath } from '../../formats/readToolpath.ts';

export interface DrawingToProve {
  /** The file: SVG, DXF or G-code. */
  readonly text: string;
  readonly study: CutStudy;
  readonly earlier?: readonly EarlierSheet[];
  /** Absent: one step surer than what the study recommends. */
  readonly setting?: Setting;
  /** Groups of lines that are not cut through: see {@link LineGroup}. */
  readonly leaveOut?: readonly string[];
}

/** Lines that a drawing keeps together: a layer, or each colour of it where it has several; a colour where there are no layers. */
export interface LineGroup {
  readonly name: string;
  readonly lines: number;
  readonly cutMm: number;
  readonly isCut: boolean;
}

export interface ProofOnDrawing extends DrawingProof {
  readonly kind: Toolpath['kind'];
  readonly groups: readonly LineGroup[];
  /** What the reader noticed: parts that it could not read, units that it had to assume. */
  readonly noticed: readonly Finding[];
  /** What is to be said of the material. */
  readonly ofMaterial: readonly Problem[];
}

/** As {@link ProofStage}, with what comes before. */
export type ProvingStage = 'reading' | 'study' | ProofStage;

export const provingStages: readonly ProvingStage[] = [
  'reading',
  'study',
  'parts',
  'places',
  'remarks',
  'corners',
  'promise',
  'time',
];

/** What is planned at most, so that it takes seconds and some hundred MB whatever is brought. */
const mostLines = 40_000;
/** Of a program the moves, too, are in memory while they are read. */
const mostSegments: Readonly<Record<Toolpath['kind'], number>> = {
  svg: 800_000,
  dxf: 800_000,
  gcode: 430_000,
};

/**
 * Carries a setting of a study to a drawing: the same on the command line and on the page. Refuses what
 * `acceptMaterial` and the readers refuse, a
 * setting that machine or sheet do not bear, `proof-nothing-to-cut`, `proof-no-setting`, `proof-too-much-to-plan`.
 */
export const proveOnDrawing = (
  { text, study, earlier = [], setting, leaveOut = [] }: DrawingToProve,
  told: (stage: ProvingStage) => void = () => undefined,
): Outcome<ProofOnDrawing> => {
  const accepted = acceptMaterial(study.stock);
  if (!accepted.ok) return accepted;
  told('reading');
  const read = readToolpath(text);
  if (!read.ok) return read;
  const { kind, noticed } = read.value;
  const lines = drawnLines(read.value.lines);
  const groupOf = groupsBy(lines);
  // A layer that is named leaves out all of its colours.
  const isLeftOut = (line: PathLine): boolean =>
    leaveOut.includes(groupOf(line)) || (line.layer !== undefined && leaveOut.includes(line.layer));
  const cut = lines.filter((line) => !isLeftOut(line) && line.points.length > 1);
  if (cut.length === 0) return refused('proof-nothing-to-cut');
  const segments = cut.reduce((sum, { points }) => sum + points.length - 1, 0);
  const mostHere = mostSegments[kind];
  if (cut.length > mostLines || segments > mostHere)
    return refused('proof-too-much-to-plan', {
      lines: cut.length,
      segments,
      mostLines,
      mostSegments: mostHere,
    });
  told('study');
  const asked = setting === undefined ? study : { ...study, ask: { powerPct: setting.powerPct } };
  const fitted = fitWithEarlier(asked, earlier);
  const beyond = setting && heldBackBy(fitted, setting);
  if (beyond !== undefined) return { ok: false, problem: beyond };
  const answer = answerFrom(fitted);
  const chosen = setting ?? surerSetting(answer);
  if (chosen === undefined) return refused('proof-no-setting');
  const { recommended, reason } = answer;
  const proof = proveDrawing(
    {
      lines: cut,
      setting: chosen,
      fitted,
      ...(recommended === null && reason !== undefined ? { noPromise: reason } : {}),
    },
    told,
  );
  return done({
    ...proof,
    ofMaterial: accepted.value,
    kind,
    groups: groupsOf(lines, groupOf, isLeftOut),
    noticed,
  });
};

const surerSetting = ({
  oneStepSurer,
  recommended,
}: ReturnType<typeof answerFrom>): Setting | undefined => {
  const spot = oneStepSurer ?? recommended;
  if (spot === null) return undefined;
  return { powerPct: spot.powerPct, speedMmPerS: spot.speedMmPerS, passes: 1 };
};

/** Drawings are commonly exported as one group, with a colour for each kind of work. */
const groupsBy = (lines: readonly PathLine[]): ((line: PathLine) => string) => {
  const coloursOf = new Map<string, Set<string>>();
  for (const { layer = '', colour = '' } of lines)
    coloursOf.set(layer, (coloursOf.get(layer) ?? new Set()).add(colour));
  return ({ layer, colour = '' }) => {
    if (layer === undefined) return colour;
    return (coloursOf.get(layer)?.size ?? 1) > 1 ? `${layer} ${colour}`.trim() : layer;
  };
};

const groupsOf = (
  lines: readonly PathLine[],
  groupOf: (line: PathLine) => string,
  isLeftOut: (line: PathLine) => boolean,
): readonly LineGroup[] => {
  const groups = new Map<string, { lines: number; cutMm: number; isCut: boolean }>();
  for (const line of lines) {
    const name = groupOf(line);
    const known = groups.get(name) ?? { lines: 0, cutMm: 0 };
    groups.set(name, {
      lines: known.lines + 1,
      cutMm: known.cutMm + lengthMm(line.points),
      isCut: !isLeftOut(line),
    });
  }
  return [...groups].map(([name, counted]) => ({ name, ...counted }));
};
