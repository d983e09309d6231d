import type { DrawingToProve, ProvingStage } from '../../app/drawing/proveOnDrawing.ts';
import type { PlannedOrder, PlanQuestion } from '../../app/sums/planOrder.ts';
import type { Comparison } from '../../core/compare/compareConditions.ts';
import type { TwoConditions } from '../../core/compare/twoConditions.ts';
import type { Aim } from '../../core/cutmodel/aims.ts';
import type { CutStudy } from '../../core/cutmodel/cutStudy.ts';
import type { NextCardAnswer } from '../../core/cutmodel/fitAnswer.ts';
import type { StudyExplained } from '../../core/explain/explainWithEarlier.ts';
import type { MotionFit, TimedJob } from '../../core/motion/fitMotion.ts';
import type { OrderAnswer, OrderWish } from '../../core/order/orderAnswer.ts';
import type { Outcome } from '../../core/problem.ts';
import type { StudyAnswer } from '../../core/study/answerWithEarlier.ts';
import type { EarlierSheet } from '../../core/study/earlierSheet.ts';
import type { Study } from '../../core/study/study.ts';
import type { PaintedProof } from './paintPicture.ts';
import type { ToneSeen } from '../../core/marking/tonesOnPhoto.ts';
import type { PhotoAnswer, PhotoQuestion, PhotoStage, TonesQuestion } from './photoQuestion.ts';

/** What one sum is asked, what it says of itself on the way, and what it answers. */
interface Sum<Question, Answer, Stage = never> {
  readonly question: Question;
  readonly stage: Stage;
  readonly answer: Answer;
}

/** A study with what earlier sheets taught. */
export interface WithEarlier {
  readonly study: CutStudy;
  readonly earlier: readonly EarlierSheet[];
}

/** How big the next card may be. */
export interface NextCardWish {
  readonly cellsWanted: number;
  readonly settingsAtMost: number;
}

/** All that the page asks of its threads. */
export interface Calls {
  readonly fit: Sum<WithEarlier & { readonly aim: Aim }, StudyAnswer>;
  readonly nextCard: Sum<WithEarlier & NextCardWish, NextCardAnswer>;
  readonly order: Sum<WithEarlier & { readonly wish: OrderWish }, Outcome<OrderAnswer>>;
  readonly plan: Sum<PlanQuestion, Outcome<PlannedOrder>>;
  readonly compare: Sum<TwoConditions, Outcome<Comparison>>;
  readonly explain: Sum<
    { readonly study: Study; readonly earlier: readonly EarlierSheet[] },
    StudyExplained
  >;
  readonly motion: Sum<readonly TimedJob[], Outcome<MotionFit>>;
  readonly prove: Sum<DrawingToProve, Outcome<PaintedProof>, ProvingStage>;
  readonly photo: Sum<PhotoQuestion, Outcome<PhotoAnswer>, PhotoStage>;
  readonly tones: Sum<TonesQuestion, Outcome<readonly ToneSeen[]>>;
}

export type CallName = keyof Calls;
export type QuestionOf<Call extends CallName> = Calls[Call]['question'];
export type StageOf<Call extends CallName> = Calls[Call]['stage'];
export type AnswerOf<Call extends CallName> = Calls[Call]['answer'];

/** What the page sends: `id` comes back with whatever is said to it. */
export interface Asked {
  readonly id: number;
  readonly call: CallName;
  readonly question: unknown;
}

/** What comes back. `broke`: a bug on the thread, told so that the page can say it instead of waiting. */
export type Reply =
  | { readonly id: number; readonly kind: 'stage'; readonly stage: unknown }
  | { readonly id: number; readonly kind: 'answer'; readonly answer: unknown }
  | { readonly id: number; readonly kind: 'broke'; readonly message: string };
