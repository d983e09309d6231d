import type { MeanSd } from '../../../core/cutmodel/fitAnswer.ts';
import { isEarlierCode } from '../../../core/study/isEarlierCode.ts';
import type { StudyAnswer } from '../../../core/study/answerWithEarlier.ts';
import { toCutStudy } from '../../../core/study/toCutStudy.ts';
import type { Study } from '../../../core/study/study.ts';
import { modelText as words } from '../../../words/texts.ts';
import { saysSomething } from '../../state/useAnswer.ts';
import type { Earlier } from '../../state/useEarlier.ts';
import { EarlierSheets } from './EarlierSheets.tsx';

export interface ModelDetailsProps {
  readonly study: Study;
  readonly answer: StudyAnswer;
  readonly earlier: Earlier;
}

/** The model's own words, one click below: what was learnt, from what, and how well the calculation converged. */
export const ModelDetails = ({ study, answer, earlier }: ModelDetailsProps) => {
  const cut = toCutStudy(study);
  const { posterior: p, convergence } = answer;
  const { linkProbabilities: links } = convergence;
  return (
    <div className="stack">
      <p className="small">
        {words.basis(cut.cells.length, talliedParts(study), cut.habit !== undefined)}
      </p>
      <EarlierSheets
        studyId={study.id}
        leansOn={answer.leansOn}
        disagrees={answer.warnings.some(({ code }) => isEarlierCode(code))}
        earlier={earlier}
      />
      <p className="small soft">{words.law}</p>
      <dl className="answer-facts">
        <Fact name={words.changeover(p.lnV50At.powerPct)} value={words.speedRange(p.lnV50At)} />
        <Fact name={words.exponent} value={plusMinus(p.powerExponent, 2)} />
        <Fact name={words.sigma} value={percent(p.sigma)} />
        <Fact name={words.hangBand} value={percent(p.hangBand)} />
        <Fact name={words.sheetSd} value={percent(p.sheetSd)} />
        {answer.warnings.some(({ code }) => code === 'flaws-not-learnt') ? null : (
          <Fact name={words.flaws} value={plusMinus(p.flawsPerMetre, 2)} />
        )}
        <Fact
          name={words.links}
          value={words.linkShares(links.normal, links.logistic, links.student3)}
        />
        <Fact
          name={words.converged}
          value={
            saysSomething(cut)
              ? words.convergence(convergence.ok, convergence.points, convergence.effectivePoints)
              : words.nothing
          }
        />
      </dl>
      <p className="small soft">{words.priors}</p>
    </div>
  );
};

const Fact = ({ name, value }: { readonly name: string; readonly value: string }) => (
  <div>
    <dt>{name}</dt>
    <dd>{value}</dd>
  </div>
);

const plusMinus = ({ mean, sd }: MeanSd, decimals: number): string =>
  `${mean.toFixed(decimals)} ± ${sd.toFixed(decimals)}`;

const percent = ({ mean, sd }: MeanSd): string =>
  `${(100 * mean).toFixed(1)}\u202f% ± ${(100 * sd).toFixed(1)}`;

const talliedParts = (study: Study): number =>
  study.tallies.reduce(
    (sum, { out, hangs, stays, spoilt }) => sum + out + hangs + stays + spoilt,
    0,
  );
