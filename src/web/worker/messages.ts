import type { CutStudy } from '../../core/cutmodel/cutStudy.ts';
import type { NextCardAnswer } from '../../core/cutmodel/fitAnswer.ts';
import type { StudyAnswer } from '../../core/study/answerWithEarlier.ts';
import type { EarlierSheet } from '../../core/study/earlierSheet.ts';
import type { Aim } from '../../core/cutmodel/aims.ts';

/** What the page asks of the model's thread. */
export type ModelQuestion =
  | {
      readonly id: number;
      readonly kind: 'fit';
      readonly study: CutStudy;
      readonly aim: Aim;
      readonly earlier: readonly EarlierSheet[];
    }
  | {
      readonly id: number;
      readonly kind: 'next-card';
      readonly study: CutStudy;
      readonly earlier: readonly EarlierSheet[];
      readonly cellsWanted: number;
      readonly settingsAtMost: number;
    };

/** What comes back. `broke`: a bug in the model, told so that the page can say it instead of waiting. */
export type ModelReply =
  | {
      readonly id: number;
      readonly kind: 'fit';
      readonly answer: StudyAnswer;
      readonly tookMs: number;
    }
  | {
      readonly id: number;
      readonly kind: 'next-card';
      readonly answer: NextCardAnswer;
      readonly tookMs: number;
    }
  | { readonly id: number; readonly kind: 'broke'; readonly message: string };
