import type { JoinedLine } from '../path/joinedLines.ts';
import type { Point } from '../path/point.ts';
import type { Polyline } from '../path/polyline.ts';
import type { ProblemOf } from '../problem.ts';
import { closeCuts } from './closeCuts.ts';
import type { ProofCode } from '../problems/proof.ts';
import { cutTwice } from './cutTwice.ts';
import type { DrawingInParts } from './partsOf.ts';

/** Something about the drawing itself that will show in the sheet; `at`: where, or where first. */
export type DrawingRemark = ProblemOf<ProofCode> & { readonly at?: Point };

/** Drawings with more segments than this are not searched for pairs of lines; that is said. */
const mostSegments = 800_000;

/** A run whose ends gape by less than this share of its length was meant to close. */
const gapShare = 0.1;

const tidy = (mm: number, digits = 2): number => Number(mm.toFixed(digits));

/** What is remarkable of a drawing, worst first. */
export const drawingRemarks = (
  lines: readonly Polyline[],
  drawn: DrawingInParts,
  thicknessMm: number,
): readonly DrawingRemark[] => {
  const remarks = [...openOutlines(drawn), ...outsideFirst(drawn), ...inPieces(drawn)];
  const segments = lines.reduce((sum, line) => sum + line.length, 0);
  if (segments > mostSegments) {
    return [...remarks, { code: 'proof-too-many-to-compare', params: { segments } }];
  }
  const twice = cutTwice(lines);
  const runs = [...drawn.outlines, ...drawn.open].map(({ points }) => points);
  const close = closeCuts(runs, thicknessMm);
  const isPart = twice?.isPart === true || close?.isPart === true;
  const partly: readonly DrawingRemark[] = isPart
    ? [{ code: 'proof-too-many-to-compare', params: { segments } }]
    : [];
  return [
    ...partly,
    ...(twice === undefined || twice.lengthMm === 0
      ? []
      : [
          {
            code: 'proof-cut-twice' as const,
            params: { lengthMm: tidy(twice.lengthMm, 1) },
            at: twice.at,
          },
        ]),
    ...remarks,
    ...(close === undefined
      ? []
      : [
          {
            code: 'proof-cuts-close' as const,
            params: {
              pairs: close.pairs,
              leastMm: tidy(close.leastMm),
              thicknessMm: tidy(thicknessMm),
            },
            at: close.at,
          },
        ]),
  ];
};

const openOutlines = ({ open }: DrawingInParts): readonly DrawingRemark[] => {
  const gaping = open.filter(
    ({ points, gapMm, lengthMm }) => points.length > 3 && gapMm < gapShare * lengthMm,
  );
  const widest = gaping.reduce<JoinedLine | undefined>(
    (most, run) => (most !== undefined && most.gapMm >= run.gapMm ? most : run),
    undefined,
  );
  if (widest === undefined) return [];
  const params = { count: gaping.length, gapMm: tidy(widest.gapMm) };
  return [{ code: 'proof-open-outline', params, ...placeOf(widest) }];
};

const inPieces = ({ outlines }: DrawingInParts): readonly DrawingRemark[] => {
  const pieced = outlines.filter((outline) => outline.lines.length > 1);
  if (pieced.length === 0) return [];
  const pieces = pieced.reduce((sum, outline) => sum + outline.lines.length, 0);
  return [{ code: 'proof-in-pieces', params: { count: pieced.length, pieces } }];
};

/** A freed piece drops or tilts: what lies in it must be cut before (common practice, no source). */
const outsideFirst = ({ outlines }: DrawingInParts): readonly DrawingRemark[] => {
  const freedAt = outlines.map(({ lines }) => lines.reduce((last, i) => Math.max(last, i), 0));
  const late = outlines.filter(({ nested: { within, copyOf } }, i) => {
    const around = within === undefined ? undefined : freedAt[within];
    return copyOf === undefined && around !== undefined && around < (freedAt[i] ?? NaN);
  });
  const [first] = late;
  if (first === undefined) return [];
  return [{ code: 'proof-outside-first', params: { count: late.length }, ...placeOf(first) }];
};

const placeOf = ({ points }: JoinedLine): { readonly at?: Point } => {
  const [at] = points;
  return at === undefined ? {} : { at };
};
