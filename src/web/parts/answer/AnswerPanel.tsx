import { useEffect, useState } from 'react';
import { settingKey, type Setting } from '../../../core/machine/setting.ts';
import type { Study } from '../../../core/study/study.ts';
import { answerHeadText as words } from '../../../words/texts.ts';
import type { BookEntry } from '../../state/queries.ts';
import { useAnswer } from '../../state/useAnswer.ts';
import { withWords } from '../../state/withWords.ts';
import { Fetched } from '../fetched/Fetched.tsx';
import { Notice } from '../notice/Notice.tsx';
import { answerSaid, AnswerSentence } from './AnswerSentence.tsx';

// Fetched with the first tap: the first screen needs none of it to be tapped.
const answered = async () => (await import('./Answered.tsx')).Answered;
const Answered = withWords(answered);
const AnswerBar = withWords(async () => (await import('./AnswerBar.tsx')).AnswerBar);
const Questioned = withWords(async () => (await import('./Questioned.tsx')).Questioned);

export interface AnswerPanelProps {
  readonly study: Study;
  /** What was kept of it last. */
  readonly kept?: BookEntry | undefined;
  /** Nobody has said yet that the card is theirs: nothing of it can be kept. */
  readonly isSample?: boolean;
}

/** The answer to a study, live: the sentence first, then what to do with it. */
export const AnswerPanel = ({ study, kept, isSample = false }: AnswerPanelProps) => {
  const { answer, behind, broke, earlier } = useAnswer(study, { kept });
  const [chosen, setChosen] = useState<Chosen>();
  useEffect(() => {
    if (behind) void Promise.all([answered(), answerSaid()]).catch(() => undefined);
  }, [behind]);
  const isAsked = behind || answer !== undefined || broke !== undefined;
  const run = answer?.standing.run;
  // A choice is one among the speeds that were offered: another answer offers others.
  const speed = chosen !== undefined && chosen.beside === keyOf(run) ? chosen.setting : run;
  return (
    <section className="answer" aria-labelledby="answer-title">
      <h2 id="answer-title" className="unseen">
        {words.title}
      </h2>
      <AnswerSentence answer={answer} behind={behind} speed={speed} kept={kept?.entry} />
      {answer === undefined ? null : (
        <Fetched>
          <AnswerBar answer={answer} speed={speed} />
        </Fetched>
      )}
      {broke === undefined ? null : (
        <Notice tone="stop">
          <p>{words.broke(broke)}</p>
        </Notice>
      )}
      {isAsked ? (
        <Fetched>
          <Questioned study={study} />
        </Fetched>
      ) : null}
      {answer === undefined ? null : (
        <Fetched>
          <Answered
            study={study}
            isSample={isSample}
            answer={answer}
            behind={behind}
            earlier={earlier}
            speed={speed}
            kept={kept?.entry}
            onChoose={(setting) => setChosen({ setting, beside: keyOf(run) })}
          />
        </Fetched>
      )}
    </section>
  );
};

interface Chosen {
  readonly setting: Setting;
  /** The speed that stood at the head when it was chosen. */
  readonly beside: string;
}

const keyOf = (setting: Setting | undefined): string =>
  setting === undefined ? '' : settingKey(setting);
