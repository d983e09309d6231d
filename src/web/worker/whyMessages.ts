import type { StudyExplained } from '../../core/explain/explainWithEarlier.ts';
import type { EarlierSheet } from '../../core/study/earlierSheet.ts';
import type { Study } from '../../core/study/study.ts';

/** What the page asks of the thread that explains: one study in the thread's life. */
export interface WhyQuestion {
  readonly study: Study;
  readonly earlier: readonly EarlierSheet[];
}

/** `broke`: a bug, told so that the page can say it. */
export type WhyReply =
  | { readonly kind: 'explained'; readonly explained: StudyExplained }
  | { readonly kind: 'broke'; readonly message: string };
