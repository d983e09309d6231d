import type { DrawingToProve, ProvingStage } from '../../app/drawing/proveOnDrawing.ts';
import type { Outcome } from '../../core/problem.ts';
import type { PaintedProof } from './paintPicture.ts';

/** What the page asks of the thread that proves drawings: one drawing in the thread's life. */
export type ProofQuestion = DrawingToProve;

/** What comes back: each stage as it begins, then the proof. `broke`: a bug, told so that the page can say it. */
export type ProofReply =
  | { readonly kind: 'stage'; readonly stage: ProvingStage }
  | { readonly kind: 'proven'; readonly proof: Outcome<PaintedProof> }
  | { readonly kind: 'broke'; readonly message: string };
