import { useCallback, useEffect, useRef, useState } from 'react';
import type { ProvingStage } from '../../app/drawing/proveOnDrawing.ts';
import type { Outcome } from '../../core/problem.ts';
import type { PaintedProof } from '../worker/paintPicture.ts';
import type { ProofQuestion, ProofReply } from '../worker/proofMessages.ts';

export interface Proving<Q> {
  /** What is under way; undefined: nothing. */
  readonly stage: ProvingStage | undefined;
  /** The last proof and what it is of; stays on screen while a newer one is worked out. */
  readonly proven: { readonly of: Q; readonly proof: Outcome<PaintedProof> } | undefined;
  /** What is asked now was stopped, and is not proven. */
  readonly isStopped: boolean;
  readonly broke: string | undefined;
  /** Ends the work under way. */
  readonly stop: () => void;
  /** Begins anew with what was stopped. */
  readonly again: () => void;
}

/** Changes of a setting as it is typed are waited out this long. */
const patienceMs = 350;

/** Proves a drawing on a thread of its own, which a newer question or `stop` ends at once. */
export const useProof = <Q extends ProofQuestion>(question: Q | undefined): Proving<Q> => {
  const [stage, setStage] = useState<ProvingStage>();
  const [proven, setProven] = useState<Proving<Q>['proven']>();
  const [stopped, setStopped] = useState<Q>();
  // Counts how often the same was asked.
  const [times, setTimes] = useState(0);
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
        if (data.kind === 'proven') setProven({ of: question, proof: data.proof });
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
    end.current = () => {
      stopIt();
      setStopped(question);
    };
    return stopIt;
  }, [question, times]);
  const stop = useCallback(() => end.current?.(), []);
  const again = useCallback(() => {
    setStopped(undefined);
    setTimes((before) => before + 1);
  }, []);
  const isStopped = stopped !== undefined && stopped === question;
  return { stage, proven, isStopped, broke, stop, again };
};

const proofThread = (): Worker =>
  new Worker(new URL('../worker/proof.ts', import.meta.url), { type: 'module', name: 'proof' });
