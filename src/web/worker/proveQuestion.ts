import { proveOnDrawing } from '../../app/drawing/proveOnDrawing.ts';
import { done } from '../../core/problem.ts';
import { paintPicture } from './paintPicture.ts';
import type { ProofQuestion, ProofReply } from './proofMessages.ts';

/** What the thread says to a drawing, piece by piece. */
export const proveQuestion = (question: ProofQuestion, say: (reply: ProofReply) => void): void => {
  try {
    const proof = proveOnDrawing(question, (stage) => say({ kind: 'stage', stage }));
    if (!proof.ok) say({ kind: 'proven', proof });
    else {
      const { picture, ...rest } = proof.value;
      say({ kind: 'proven', proof: done({ ...rest, picture: paintPicture(picture) }) });
    }
  } catch (error) {
    say({ kind: 'broke', message: error instanceof Error ? error.message : String(error) });
  }
};
