import { useCallback, useEffect, useRef, useState } from 'react';
import type { ProvingStage } from '../../app/drawing/proveOnDrawing.ts';
import type { Outcome } from '../../core/problem.ts';
import type { PaintedProof } from '../worker/paintPicture.ts';
import type { ProofQuestion, ProofReply } from '../worker/proofMessages.ts';

export interface Proving {
  /** What is under way; undefined: nothing. */
  readonly stage: ProvingStage | undefined;
  /** The last proof; stays on screen while a newer one is reckoned. */
  readonly proof: Outcome<PaintedProof> | undefined;
  readonly broke: string | undefined;
  /** Ends the work under way. */
  readonly stop: () => void;
}

/** Changes of a setting as it is typed are waited out this long. */
const patienceMs = 350;

/** Proves a drawing on a thread of its own, which a newer question or `stop` ends at once. */
export const useProof = (question: ProofQuestion | undefined): Proving => {
  const [stage, setStage] = useState<ProvingStage>();
  const [proof, setProof] = useState<Outcome<PaintedProof>>();
  const [broke, setBroke] = useState<string>();
  const end = useRef<() => void>(undefined);
  useEffect(() => {
    if (question === undefined) return;
    let thread: Worker | undefined;
    const timer = setTimeout(() => {
      setStage('reading');
      setBroke(undefined);
      thread = proofThread();
      thread.onmessage = ({ data }: MessageEvent<ProofReply>) => {
        if (data.kind === 'stage') {
          setStage(data.stage);
          return;
        }
        if (data.kind === 'proven') setProof(data.proof);
        else setBroke(data.message);
        setStage(undefined);
        thread?.terminate();
      };
      thread.onerror = ({ message }) => {
        setBroke(message);
        setStage(undefined);
      };
      thread.postMessage(question);
    }, patienceMs);
    const stopIt = (): void => {
      clearTimeout(timer);
      thread?.terminate();
      setStage(undefined);
    };
    end.current = stopIt;
    return stopIt;
  }, [question]);
  const stop = useCallback(() => end.current?.(), []);
  return { stage, proof, broke, stop };
};

const proofThread = (): Worker =>
  new Worker(new URL('../worker/proof.ts', import.meta.url), { type: 'module', name: 'proof' });
