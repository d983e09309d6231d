import type { PhotosGraded, PhotosToGrade } from './gradePhotos.ts';
import type { CutStudy } from '../../core/cutmodel/cutStudy.ts';
import type { FitAnswer } from '../../core/cutmodel/fitAnswer.ts';
import type { StudyExplained } from '../../core/explain/explainWithEarlier.ts';
import type { Explanation } from '../../core/explain/explanation.ts';
import type { Comparison } from '../../core/compare/compareConditions.ts';
import type { TwoConditions } from '../../core/compare/twoConditions.ts';
import type { OrderWish } from '../../core/order/orderAnswer.ts';
import type { Outcome } from '../../core/problem.ts';
import type { StudyAnswer } from '../../core/study/answerWithEarlier.ts';
import type { EarlierSheet } from '../../core/study/earlierSheet.ts';
import type { Study } from '../../core/study/study.ts';
import type { ExampleWorkshop } from '../../core/virtual/exampleWorkshop.ts';
import type { LaserOrWood, TwoStrips } from '../../core/watch/laserOrWood.ts';
import type { WatchFile } from '../../formats/watchFile.ts';
import type { FileChecked, FileToCheck } from '../drawing/checkFile.ts';
import type { DrawingGrown, DrawingToGrow } from '../drawing/growDrawing.ts';
import type { OrderAnswered } from './answerOrder.ts';
import type { AnswerQuestion, KeptJudged, KeptQuestion } from './standingAsKnown.ts';
import type { NextCardProposed, NextCardWish } from './nextCardFor.ts';
import type { PlannedOrder, PlanQuestion } from './planOrder.ts';
import type { DrawingToProve, ProofOnDrawing } from '../drawing/proveOnDrawing.ts';
import type { StripRungs, StripWanted } from './stripToCut.ts';
import type { WatchedByFile } from './watchByFile.ts';

type Sum<Q, A> = (question: Q) => Promise<Outcome<A>>;

interface WithEarlier {
  readonly cut: CutStudy;
  readonly earlier: readonly EarlierSheet[];
}

/** What the cut model is asked: one line a sum. Questions and answers are plain data, so that they may cross to a thread. */
export interface ModelSums {
  readonly answerCutStudy: Sum<CutStudy, FitAnswer>;
  readonly answerWithEarlier: Sum<AnswerQuestion, StudyAnswer>;
  readonly answerStudy: Sum<AnswerQuestion, StudyAnswer>;
  readonly answerToDesignBy: Sum<WithEarlier, FitAnswer | undefined>;
  readonly nextCard: Sum<
    {
      readonly study: CutStudy;
      readonly wish: NextCardWish;
      readonly earlier: readonly EarlierSheet[];
    },
    NextCardProposed
  >;
  readonly explainCutStudy: Sum<CutStudy, Explanation>;
  readonly explainStudy: Sum<
    { readonly study: Study; readonly earlier: readonly EarlierSheet[] },
    StudyExplained
  >;
  readonly compareTwo: Sum<TwoConditions, Comparison>;
  readonly judgeKept: Sum<KeptQuestion, KeptJudged>;
  readonly laserOrWood: Sum<WithEarlier & { readonly strips: TwoStrips }, LaserOrWood>;
  readonly stripToCut: Sum<StripWanted, StripRungs>;
  readonly exampleWorkshop: Sum<string, ExampleWorkshop>;
  readonly answerOrder: Sum<{ readonly study: CutStudy; readonly wish: OrderWish }, OrderAnswered>;
  readonly planOrder: Sum<PlanQuestion, PlannedOrder>;
  readonly watchByFile: Sum<WatchFile, WatchedByFile>;
  readonly checkFile: Sum<FileToCheck, FileChecked>;
  readonly growDrawing: Sum<DrawingToGrow, DrawingGrown>;
  readonly gradePhotos: Sum<PhotosToGrade, PhotosGraded>;
  readonly proveOnDrawing: Sum<DrawingToProve, ProofOnDrawing>;
}

export type SumName = keyof ModelSums;
export type QuestionOf<K extends SumName> = Parameters<ModelSums[K]>[0];
export type SumOutcome<K extends SumName> = Awaited<ReturnType<ModelSums[K]>>;

/**
 * Who is asked for sums. Refuses beside what a sum refuses: `sum-took-too-long`, `sum-too-big`, `sums-waiting`,
 * `sum-not-wanted`. Never asked inside a session of the store: nobody who writes waits for a sum.
 */
export interface Model {
  /** `about`: the sheet that it is of, so that what was worked out for it before is at hand. */
  readonly ask: <K extends SumName>(
    name: K,
    question: QuestionOf<K>,
    about?: string,
  ) => Promise<SumOutcome<K>>;
}
