import { useState } from 'react';
import { useLocation } from 'wouter';
import type { NextCardAnswer } from '../../../core/cutmodel/fitAnswer.ts';
import type { Setting } from '../../../core/machine/setting.ts';
import type { Study } from '../../../core/study/study.ts';
import { answerText } from '../../../words/en/screens/answer.ts';
import { studyText as words } from '../../../words/en/screens/study.ts';
import { problemInWords } from '../../state/inWords.ts';
import { Action } from '../../parts/action/Action.tsx';
import { Section } from '../../parts/page/Page.tsx';
import { keepNextRungs } from '../../state/nextRungs.ts';
import { toCutStudy } from '../../../core/study/toCutStudy.ts';
import { saysSomething, useNextCard } from '../../state/useAnswer.ts';
import { RungChips } from './RungChips.tsx';

/** Where another card would teach most and what it should gain; or that it is enough. Reckoned when asked for. */
export const NextCard = ({ study }: { readonly study: Study }) => {
  const [asked, setAsked] = useState(false);
  if (!saysSomething(toCutStudy(study))) return null;
  return (
    <Section title={words.next}>
      {asked ? (
        <Proposal study={study} />
      ) : (
        <div className="actions">
          <Action onPress={() => setAsked(true)}>{words.nextAsk}</Action>
        </div>
      )}
    </Section>
  );
};

const Proposal = ({ study }: { readonly study: Study }) => {
  const { answer, broke } = useNextCard(study, { cellsWanted: 12, settingsAtMost: 6 });
  const [, goTo] = useLocation();
  if (broke !== undefined) return <p>{answerText.broke(broke)}</p>;
  if (answer === undefined) return <p role="status">{answerText.reckoning}</p>;
  const { message, remedy } = problemInWords(answer.reason);
  const make = (): void => {
    keepNextRungs(study.id, settingsOf(answer));
    goTo(`/study/${study.id}/card?next`);
  };
  return (
    <div className="stack" role="status">
      <p>
        {message} {remedy}
      </p>
      {answer.worthCutting ? <RungChips settings={settingsOf(answer)} /> : null}
      <div className="actions">
        <Action kind={answer.worthCutting ? 'strong' : 'plain'} onPress={make}>
          {answer.worthCutting ? words.nextMake : words.nextAnyway}
        </Action>
      </div>
    </div>
  );
};

/** Each setting once, slowest first. */
const settingsOf = ({ cells }: NextCardAnswer): readonly Setting[] => {
  const settings = new Map(
    cells.map(({ rung, powerPct, speedMmPerS, passes }) => [
      rung,
      { powerPct, speedMmPerS, passes },
    ]),
  );
  return [...settings.values()].sort(
    (a, b) => a.powerPct - b.powerPct || a.speedMmPerS - b.speedMmPerS,
  );
};
