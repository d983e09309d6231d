import type { StudyExplained } from '../../../core/explain/explainWithEarlier.ts';
import { whyPicture } from '../../../core/explain/whyPicture.ts';
import type { EarlierSheet } from '../../../core/study/earlierSheet.ts';
import type { Study } from '../../../core/study/study.ts';
import { whySentences, whyText as words } from '../../../words/texts.ts';
import { earlierSheetsFor } from '../../state/useEarlier.ts';
import { workshopReach } from '../../state/reach.ts';
import { useWhy } from '../../state/useWhy.ts';
import { DownloadLink } from '../action/DownloadLink.tsx';
import { More } from '../more/More.tsx';
import { Notice } from '../notice/Notice.tsx';
import { WhyFigures } from './WhyFigures.tsx';
import { WhyPictureView } from './WhyPictureView.tsx';
import './why.css';

export interface WhyViewProps {
  readonly study: Study;
  readonly earlier: readonly EarlierSheet[];
}

/** What carries an answer and what would change it: a picture, sentences, and the figures one click below. */
const WhyView = ({ study, earlier }: WhyViewProps) => {
  const { answered, isBusy, broke } = useWhy(study, earlier);
  if (broke !== undefined)
    return (
      <Notice tone="stop">
        <p>{words.broke(broke)}</p>
      </Notice>
    );
  if (answered === undefined) return <p>{words.calculating}</p>;
  const page = `/api/studies/${encodeURIComponent(study.id)}/reasoning.pdf?earlierSheets=${earlierSheetsFor(study.id)}`;
  return (
    <div className={isBusy ? 'why why-behind' : 'why'} aria-busy={isBusy}>
      <Explained {...answered.answer} />
      <div className="small">
        {workshopReach().isServed ? (
          <a href={page} target="_blank" rel="noreferrer">
            {words.pdf}
          </a>
        ) : (
          <DownloadLink href={page} fileName="reasoning.pdf">
            {words.pdf}
          </DownloadLink>
        )}
      </div>
    </div>
  );
};

export default WhyView;

const Explained = ({ cut, explanation }: StudyExplained) => {
  const said = whySentences(explanation, cut.cells);
  const { speed } = explanation;
  if (said === null || speed === undefined) return <p>{words.noAnswer}</p>;
  return (
    <>
      <p className="why-held">{said.held}</p>
      <WhyPictureView picture={whyPicture(cut, speed)} speedMmPerS={speed.speedMmPerS} />
      <div className="why-said">
        <Sentences title={words.carries} lines={said.carries} />
        <Sentences title={words.changes} lines={said.changes} />
        <Sentences title={words.expectation} lines={said.expectation} />
        <Sentences title={words.earlier} lines={said.earlier} />
      </div>
      <More title={words.figures}>
        <WhyFigures cut={cut} explanation={explanation} speed={speed} />
      </More>
    </>
  );
};

const Sentences = ({
  title,
  lines,
}: {
  readonly title: string;
  readonly lines: readonly string[];
}) =>
  lines.length === 0 ? null : (
    <section>
      <h4>{title}</h4>
      <ul className="why-lines">
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </section>
  );
