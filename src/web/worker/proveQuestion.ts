import { proveOnDrawing } from '../../app/proveOnDrawing.ts';
import type { ProofQuestion, ProofReply } from './proofMessages.ts';

/** What the thread says to a drawing, piece by piece. */
export const proveQuestion = (question: ProofQuestion, say: (reply: ProofReply) => void): void => {
  try {
    const proof = proveOnDrawing(question, (stage) => say({ kind: 'stage', stage }));
    say({ kind: 'proven', proof });
  } catch (error) {
    say({ kind: 'broke', message: error instanceof Error ? error.message : String(error) });
  }
};
