import { useEffect, useRef, useState } from 'react';
import type { Setting } from '../../../core/machine/setting.ts';
import { answerText as words, standingText } from '../../../words/texts.ts';
import type { AnswerStanding } from '../../state/useAnswer.ts';

export interface AnswerBarProps {
  readonly answer: AnswerStanding;
  /** The one at the head. */
  readonly speed: Setting | undefined;
}

/**
 * The answer in one line at the foot of a phone's screen, while the sentence itself is below the edge: whoever taps the
 * card sees what each tap does. The sentence is the one that is read out; this is its shadow.
 */
export const AnswerBar = ({ answer, speed }: AnswerBarProps) => {
  const place = useRef<HTMLDivElement>(null);
  const below = useIsBelow(place);
  return (
    <div ref={place} className="answer-bar-place">
      {below ? (
        <a className="answer-bar" href="#answer-title" tabIndex={-1} aria-hidden="true">
          <strong>{speed === undefined ? words.noneYet : words.cutAt(speed)}</strong>
          {speed === undefined ? null : <span>{standingText.short(answer.standing)}</span>}
        </a>
      ) : null}
    </div>
  );
};

/** Whether the element lies below what the screen shows. */
const useIsBelow = (place: React.RefObject<HTMLElement | null>): boolean => {
  const [below, setBelow] = useState(false);
  useEffect(() => {
    const { current } = place;
    if (current === null) return;
    // All that lies above the screen counts as seen, so that a leap over the sentence is noticed too.
    const observer = new IntersectionObserver(
      ([entry]) => {
        if (entry !== undefined) setBelow(!entry.isIntersecting);
      },
      { rootMargin: '9999999px 0px 0px' },
    );
    observer.observe(current);
    return () => observer.disconnect();
  }, [place]);
  return below;
};
