import { useEffect, useState } from 'react';
import type { PhotoQuestion, PhotoReply } from '../worker/photoMessages.ts';

/** How far the photographs of a card are read; what came last of the question that stands. */
export type PhotoReading = PhotoReply | { readonly kind: 'unasked' };

/**
 * Reads photographs on a thread of their own, which a newer question ends at once and which takes its memory with it. Give
 * the same object for the same question.
 */
export const usePhotoRead = (question: PhotoQuestion | undefined): PhotoReading => {
  const [last, setLast] = useState<{
    readonly question: PhotoQuestion;
    readonly reply: PhotoReply;
  }>();
  useEffect(() => {
    if (question === undefined) return undefined;
    const thread = photoThread();
    thread.onmessage = ({ data }: MessageEvent<PhotoReply>) => {
      setLast({ question, reply: data });
      if (data.kind !== 'at') thread.terminate();
    };
    thread.onerror = ({ message }) => setLast({ question, reply: { kind: 'broke', message } });
    thread.postMessage(question);
    return () => thread.terminate();
  }, [question]);
  if (question === undefined) return { kind: 'unasked' };
  return last?.question === question ? last.reply : { kind: 'at', step: 'opening' };
};

/** Starts the thread from the built page. */
const photoThread = (): Worker =>
  new Worker(new URL('../worker/photo.ts', import.meta.url), { type: 'module', name: 'photo' });
