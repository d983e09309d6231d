import { useEffect, useRef, useState } from 'react';
import type { Quad } from '../../../core/photo/quads.ts';
import { marksText, photoText } from '../../../words/texts.ts';
import { Action } from '../../parts/action/Action.tsx';
import { Cautions } from '../../parts/cautions/Cautions.tsx';
import { Notice, ProblemNotice } from '../../parts/notice/Notice.tsx';
import { CornersByHand } from '../../parts/photo/CornersByHand.tsx';
import { PhotoPick } from '../../parts/photo/PhotoPick.tsx';
import { Said } from '../../parts/said/Said.tsx';
import { useCall } from '../../state/useCall.ts';
import type { TonesQuestion } from '../../worker/photoQuestion.ts';

const words = marksText.tonePhoto;
const photoActs = ['photo'] as const;

export interface TonesFromPhotoProps {
  readonly steps: number;
  /** L* of each step, the gentlest first. */
  readonly onRead: (lightness: readonly number[]) => void;
}

/** A photo of the shades beside white paper, the corners that are pointed at on it, and what is read of it. */
export const TonesFromPhoto = ({ steps, onRead }: TonesFromPhotoProps) => {
  const [photo, setPhoto] = useState<File>();
  const [question, setQuestion] = useState<TonesQuestion>();
  const { answered, broke, isBusy } = useCall('tones', question);
  const answer = answered?.to === question ? answered?.answer : undefined;
  // Said once: what a person corrects afterwards is not read over.
  const said = useRef<TonesQuestion>(undefined);
  useEffect(() => {
    if (answer?.ok !== true || said.current === question) return;
    said.current = question;
    onRead(answer.value.map(({ lightness }) => Number(lightness.toFixed(1))));
  }, [answer, question, onRead]);
  const begin = (next: File | undefined): void => {
    setPhoto(next);
    setQuestion(undefined);
  };
  return (
    <>
      <Cautions acts={photoActs} title={words.cautions} />
      <ol className="marks-steps small">
        {words.how.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ol>
      {photo === undefined ? (
        <PhotoPick labels={words.pick} onPick={begin} />
      ) : (
        <>
          {answer?.ok === true ? null : (
            <CornersByHand
              key={photo.name}
              words={words}
              photo={photo}
              onCorners={(corners: Quad) => setQuestion({ steps, photo, corners })}
            />
          )}
          {question !== undefined && isBusy ? <p aria-busy="true">{words.reading}</p> : null}
          {answer?.ok === false ? <ProblemNotice tone="stop" problem={answer.problem} /> : null}
          {broke === undefined ? null : (
            <Notice tone="stop" title={words.broke}>
              <p>
                {photoText.brokeMore} {broke}
              </p>
            </Notice>
          )}
          {answer?.ok === true ? <Said what="done">{words.read}</Said> : null}
          <div className="actions">
            <Action kind="quiet" onPress={() => begin(undefined)}>
              {words.again}
            </Action>
          </div>
        </>
      )}
    </>
  );
};
