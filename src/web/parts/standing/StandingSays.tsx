import type { Setting } from '../../../core/machine/setting.ts';
import { isNotToBeCut } from '../../../core/standing/isNotToBeCut.ts';
import type { Standing } from '../../../core/standing/standing.ts';
import {
  answerText,
  bookText,
  standingText as words,
  standingWords,
  speedWords,
} from '../../../words/texts.ts';
import { wordsIn } from '../../../words/inWords.ts';
import { heldTogether } from '../../state/inWords.ts';
import './standing.css';

/** These words come with the standing itself, since they are needed before anything is tapped. */
const inWords = wordsIn(standingWords);

export interface StandingProps {
  readonly standing: Standing;
}

/** How it stands, in two words: the same on every screen. */
export const StandingMark = ({ standing }: StandingProps) => {
  const { kind, isGuess } = standing;
  return (
    <span className={`standing-mark standing-${kind}`}>
      {isNotToBeCut(standing) ? words.notToBeCut : words.kinds[kind]}
      {isGuess ? ` · ${words.guess}` : ''}
    </span>
  );
};

/** The one setting to run now, with what it was kept at where that is another. */
export const StandingRun = ({ standing, kept }: StandingProps & { kept?: Setting }) => {
  if (isNotToBeCut(standing)) return <>{words.notToBeCut}</>;
  const { run } = standing;
  const spot = run ?? kept;
  if (spot === undefined) return null;
  const isOther = kept !== undefined && spot.speedMmPerS !== kept.speedMmPerS;
  return (
    <>
      {answerText.cutAt(spot)}
      {isOther ? ' ' : ''}
      {isOther ? (
        <span className="standing-kept">{words.keptWas(speedWords(kept.speedMmPerS))}</span>
      ) : null}
    </>
  );
};

/** What is promised at the setting: only where it stands. */
export const promiseOfStanding = (standing: Standing, surePct: number): string =>
  standing.kind === 'failed' || isNotToBeCut(standing)
    ? words.noPromise
    : bookText.promise(standing.promise.outOf100, surePct);

/** Why it stands so, and what to do. */
export const StandingWhy = ({ standing }: StandingProps) => {
  const { message, remedy } = heldTogether(inWords(standing.why));
  return (
    <p className="standing-why">
      {message} <span className="soft">{remedy}</span>
    </p>
  );
};

/** The standing whole: the mark, and why. */
export const StandingSays = ({ standing }: StandingProps) => (
  <div className="standing">
    <StandingMark standing={standing} />
    <StandingWhy standing={standing} />
  </div>
);
