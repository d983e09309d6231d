import type { Problem } from '../../core/problem.ts';
import type { PhotoAnswer, PhotoQuestion, PhotoStage } from '../worker/photoQuestion.ts';
import { useCall } from './useCall.ts';

/** How far the photographs of a card are read; what came last of the question that stands. */
export type PhotoReading =
  | { readonly kind: 'unasked' }
  | { readonly kind: 'at'; readonly step: PhotoStage }
  | { readonly kind: 'refused'; readonly problem: Problem }
  | ({ readonly kind: 'read' } & PhotoAnswer)
  | { readonly kind: 'broke'; readonly message: string };

/**
 * Reads photographs on a thread of their own, which a newer question ends at once and which takes its memory with it. Give
 * the same object for the same question.
 */
export const usePhotoRead = (question: PhotoQuestion | undefined): PhotoReading => {
  const { answered, broke, working, isBusy } = useCall('photo', question);
  if (question === undefined) return { kind: 'unasked' };
  if (isBusy) return { kind: 'at', step: working?.stage ?? 'opening' };
  if (broke !== undefined) return { kind: 'broke', message: broke };
  if (answered === undefined) return { kind: 'at', step: 'opening' };
  const { answer } = answered;
  return answer.ok
    ? { kind: 'read', ...answer.value }
    : { kind: 'refused', problem: answer.problem };
};
