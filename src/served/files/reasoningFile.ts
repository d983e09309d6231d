import type { StudyExplained } from '../../core/explain/explainWithEarlier.ts';
import type { Outcome } from '../../core/problem.ts';
import type { Study } from '../../core/study/study.ts';

/** Draws the page of reasons (PDF); the program wires it, since printing is another layer's work. */
export type DrawReasoning = (
  explained: StudyExplained & { readonly study: Study },
) => Promise<Outcome<Uint8Array>>;
