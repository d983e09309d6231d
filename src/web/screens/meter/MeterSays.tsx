import type { MeterReport } from '../../../core/metering/meterReport.ts';
import type { UnkeptMetering } from '../../../core/metering/metering.ts';
import { currentWords, powerWords, meterText as words } from '../../../words/texts.ts';
import { More } from '../../parts/more/More.tsx';
import { ProblemNotice } from '../../parts/notice/Notice.tsx';
import { MeterConverter } from './MeterConverter.tsx';
import { MeterPicture } from './MeterPicture.tsx';

export interface MeterSaysProps {
  readonly metering: UnkeptMetering;
  readonly report: MeterReport;
}

/** The threshold, rated current, the curve with its band, and what is to be asked of the readings. */
export const MeterSays = ({ metering, report }: MeterSaysProps) => {
  const { curve, rated, remarks, lines } = report;
  const { darkAtPct, firesAtPct } = curve.firing;
  return (
    <div className="stack">
      {remarks.map((remark, i) => (
        <ProblemNotice key={`${remark.code}${String(i)}`} tone="care" problem={remark} />
      ))}
      <div className="meter-sentences">
        {rated === undefined ? null : (
          <p className="meter-rated">{words.ratedAt(metering.ratedCurrentMa ?? 0, rated)}</p>
        )}
        <p>{words.fires(darkAtPct, firesAtPct)}</p>
        <p className="small soft">
          {words.noise(curve.noise.sdMa, curve.noise.from)} {words.scale}
        </p>
      </div>
      <MeterPicture metering={metering} report={report} />
      <MeterConverter curve={curve} ratedMa={metering.ratedCurrentMa} />
      <More title={words.table}>
        <table className="meter-lines figure-text">
          <thead>
            <tr>
              <th scope="col">{words.setting}</th>
              <th scope="col">{words.convertCurrent}</th>
              <th scope="col">{words.plusMinus}</th>
              {rated === undefined ? null : <th scope="col">{words.ofRated}</th>}
            </tr>
          </thead>
          <tbody>
            {lines.map(({ powerPct, currentMa, lowMa, highMa, ratedPct }) => (
              <tr key={powerPct}>
                <th scope="row">{powerWords(powerPct)}</th>
                <td>{currentWords(currentMa)}</td>
                <td>
                  {lowMa.toFixed(1)} – {highMa.toFixed(1)}
                </td>
                {ratedPct === undefined ? null : <td>{words.perRated(ratedPct)}</td>}
              </tr>
            ))}
          </tbody>
        </table>
      </More>
    </div>
  );
};
