import type { ProvenSetting } from '../../../core/book/provenSetting.ts';
import type { RecordedTally } from '../../../core/study/study.ts';
import { answerText } from '../../../words/en/screens/answer.ts';
import { bedText as words } from '../../../words/en/screens/study.ts';
import { bookText } from '../../../words/en/screens/book.ts';
import { tallyText } from '../../../words/en/screens/tally.ts';
import { Cautions } from '../../parts/cautions/Cautions.tsx';
import './bed.css';

const runActs = ['unattended'] as const;

export interface KeptSettingProps {
  readonly entry: ProvenSetting;
  readonly lastTally: RecordedTally | undefined;
}

/** The setting that was kept for this sheet, as it is run. */
export const KeptSetting = ({ entry, lastTally }: KeptSettingProps) => (
  <div className="kept">
    <p className="answer-cut">{answerText.cutAt(entry.setting)}</p>
    <p className="answer-promise">{bookText.promise(entry.promise.outOf100, entry.surePct)}</p>
    <p className="soft">
      {lastTally === undefined
        ? words.noTally
        : `${words.lastTally}: ${tallyText.line(lastTally)}.`}
    </p>
    <Cautions acts={runActs} brief />
  </div>
);
