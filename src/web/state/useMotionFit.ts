import { useCallback, useEffect, useRef, useState } from 'react';
import type { MotionFit } from '../../core/motion/fitMotion.ts';
import type { Outcome } from '../../core/problem.ts';
import type { MotionQuestion, MotionReply } from '../worker/motionMessages.ts';

/** How far the question is. */
export type MotionFitting =
  | { readonly at: 'unasked' | 'working' }
  | { readonly at: 'fitted'; readonly fit: Outcome<MotionFit> }
  | { readonly at: 'broke'; readonly message: string };

export interface UseMotionFit {
  readonly fitting: MotionFitting;
  readonly ask: (jobs: MotionQuestion) => void;
  /** Ends the work under way and takes its answer away. */
  readonly forget: () => void;
}

/** Works out how a machine moves on a thread of its own, which a newer question ends at once. */
export const useMotionFit = (): UseMotionFit => {
  const [fitting, setFitting] = useState<MotionFitting>({ at: 'unasked' });
  const thread = useRef<Worker>(undefined);
  const end = useCallback((): void => {
    thread.current?.terminate();
    thread.current = undefined;
  }, []);
  useEffect(() => end, [end]);
  const ask = useCallback(
    (jobs: MotionQuestion): void => {
      end();
      setFitting({ at: 'working' });
      const started = motionThread();
      thread.current = started;
      started.onmessage = ({ data }: MessageEvent<MotionReply>) => {
        setFitting(
          data.kind === 'fitted'
            ? { at: 'fitted', fit: data.fit }
            : { at: 'broke', message: data.message },
        );
        end();
      };
      started.onerror = ({ message }) => setFitting({ at: 'broke', message });
      started.postMessage(jobs);
    },
    [end],
  );
  const forget = useCallback((): void => {
    end();
    setFitting({ at: 'unasked' });
  }, [end]);
  return { fitting, ask, forget };
};

const motionThread = (): Worker =>
  new Worker(new URL('../worker/motion.ts', import.meta.url), { type: 'module', name: 'motion' });
