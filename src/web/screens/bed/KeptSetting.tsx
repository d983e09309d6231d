import { actsOfKept } from '../../../core/book/actsOfKept.ts';
import type { ProvenSetting } from '../../../core/book/provenSetting.ts';
import type { RecordedTally } from '../../../core/study/study.ts';
import type { Standing } from '../../../core/standing/standing.ts';
import { bedText as words, tallyText } from '../../../words/texts.ts';
import {
  promiseOfStanding,
  StandingRun,
  StandingSays,
} from '../../parts/standing/StandingSays.tsx';
import { Cautions } from '../../parts/cautions/Cautions.tsx';
import './bed.css';

export interface KeptSettingProps {
  readonly entry: ProvenSetting;
  readonly standing: Standing;
  readonly lastTally: RecordedTally | undefined;
}

/** The setting that was kept for this sheet, as it is run. */
export const KeptSetting = ({ entry, standing, lastTally }: KeptSettingProps) => (
  <div className="kept">
    <p className="answer-cut">
      <StandingRun standing={standing} kept={entry.setting} />
    </p>
    <p className="answer-promise">{promiseOfStanding(standing, entry.surePct)}</p>
    <StandingSays standing={standing} />
    <p className="soft">
      {lastTally === undefined
        ? words.noTally
        : `${words.lastTally}: ${tallyText.line(lastTally)}.`}
    </p>
    <Cautions acts={[...actsOfKept(entry, standing.run), 'unattended']} brief />
  </div>
);
