import type { BedReport } from '../../../core/bed/bedVerdict.ts';
import { bedPlaces } from '../../../core/bed/place.ts';
import type { CautionAct } from '../../../words/shape/caution.ts';
import { cornersText as words } from '../../../words/texts.ts';
import { Cautions } from '../../parts/cautions/Cautions.tsx';
import { More } from '../../parts/more/More.tsx';
import { Looks } from '../../parts/looks/Looks.tsx';
import { Section } from '../../parts/page/Page.tsx';
import { Said } from '../../parts/said/Said.tsx';

const lookActs: readonly CautionAct[] = ['focus'];

export interface CornersAnswerProps {
  readonly report: BedReport;
  readonly isStudied: boolean;
}

/** Where the bed is weak, how surely, and what to look at. */
export const CornersAnswer = ({ report, isStudied }: CornersAnswerProps) => (
  <Section title={words.answer}>
    <Said what="answer" className="corners-verdict">
      {words.verdict(report.verdict)}
    </Said>
    <dl className="corners-figures">
      {bedPlaces.map((place) => (
        <div key={place}>
          <dt>{words.places[place]}</dt>
          <dd>{words.placeLine(report, place)}</dd>
          <dd>{words.weakChance(report.effects.places[place])}</dd>
        </div>
      ))}
    </dl>
    <More title={words.exactTitle}>
      <ul>
        {bedPlaces.map((place) => (
          <li key={place}>
            {words.places[place]}: {words.exact(report, place)}
          </li>
        ))}
      </ul>
      <p className="small soft">{words.exactMore}</p>
    </More>
    <p className="small soft">{isStudied ? words.scatterFromCards : words.scatterUnstudied}</p>
    {report.suspects.length === 0 ? null : (
      <>
        <h3>{words.look}</h3>
        <Cautions acts={lookActs} title={words.lookCautions} />
        <Looks numbered looks={report.suspects.map((suspect) => words.suspects[suspect])} />
        <p className="small soft">{words.lookMore}</p>
      </>
    )}
  </Section>
);
