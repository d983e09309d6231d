import { Link } from 'wouter';
import { jobSheet } from '../../../core/card/jobSheet.ts';
import type { Card } from '../../../core/card/card.ts';
import { cardHeldBack } from '../../../core/study/cardHeldBack.ts';
import { stockThicknessMm } from '../../../core/stock/stockThickness.ts';
import { glowsOn } from '../../../core/stock/glowsOn.ts';
import type { Study } from '../../../core/study/study.ts';
import {
  takeText as words,
  jobSheetText as job,
  pairText,
  shellText,
  timeText,
  studyText,
} from '../../../words/texts.ts';
import { Action, ActionLink } from '../../parts/action/Action.tsx';
import { Cautions } from '../../parts/cautions/Cautions.tsx';
import { Invented } from '../../parts/invented/Invented.tsx';
import { Beside } from '../../parts/page/Beside.tsx';
import { ProblemNotice } from '../../parts/notice/Notice.tsx';
import { Page, Section } from '../../parts/page/Page.tsx';
import { MeasuredTime } from '../../parts/measuredTime/MeasuredTime.tsx';
import { usePairing } from '../../state/queries.ts';
import { useStudy } from '../../state/workshop.tsx';
import { CardFiles } from './CardFiles.tsx';
import { NotePlaces } from './NotePlaces.tsx';
import { TypeInTable } from './TypeInTable.tsx';
import { ZeroPicture } from './ZeroPicture.tsx';
import { pageAt, pages } from '../../state/pages.ts';
import './take.css';

export interface TakeScreenProps {
  readonly studyId: string;
  readonly code: string;
}

/** All that is needed beside the machine; printed, it is one page. */
export const TakeScreen = ({ studyId, code }: TakeScreenProps) => {
  const { study, loading } = useStudy(studyId);
  const card = study?.cards.find((each) => each.code === code);
  if (study !== undefined && card !== undefined) return <AtMachine study={study} card={card} />;
  if (loading) return <p className="page-wait">{shellText.loading}</p>;
  return (
    <Page title={studyText.gone} lead={studyText.goneMore}>
      {null}
    </Page>
  );
};

/** The way to let a phone in; said at the desk alone. */
const ByPhone = () => {
  const { data } = usePairing();
  return data?.desk === true ? (
    <p className="soft take-screen-only">
      {pairText.byPhone} <Link href={`${pages.machine}#phone`}>{pairText.howIn}</Link>
    </p>
  ) : null;
};

const AtMachine = ({ study, card }: { readonly study: Study; readonly card: Card }) => {
  const at = study.cards.findIndex(({ code }) => code === card.code);
  const before = study.cards.slice(0, at).findLast(({ origin }) => origin === 'designed');
  const sheet = jobSheet(card, {
    ...(before === undefined ? {} : { before }),
    machine: study.machine,
    glows: glowsOn(study.stock.material),
  });
  const { time, hottest } = sheet;
  const heldBack = cardHeldBack(study, card);
  if (heldBack !== undefined)
    return (
      <Page title={words.title(card.code)}>
        <Invented is={study.isExample} />
        <ProblemNotice problem={heldBack} tone="stop" />
        <div className="actions">
          <ActionLink href={pageAt(pages.newCard, { id: study.id })}>{words.another}</ActionLink>
          <ActionLink href={pageAt(pages.card, { id: study.id, code: card.code })}>
            {words.read}
          </ActionLink>
        </div>
      </Page>
    );
  return (
    <Page title={words.title(card.code)} lead={words.lead} width="two">
      <Invented is={study.isExample} />
      <p className="take-stock">
        <strong>{words.putIn}</strong> {putInWords(study, card)}
      </p>
      <Beside>
        <>
          <div className="take-screen-only">
            <CardFiles study={study} card={card} />
          </div>
          <Section title={job.typeInTitle}>
            <TypeInTable list={sheet.typeIn} />
          </Section>
        </>
        <>
          <Section title={job.stepsTitle}>
            <div className="take-steps">
              <ol>
                {sheet.steps.map((step) => (
                  <li key={step}>{job.step(step)}</li>
                ))}
              </ol>
              <ZeroPicture card={card} />
            </div>
            <p className="take-paper-only">{job.time(time)}</p>
            {hottest === undefined ? null : <p>{job.hottest(hottest.rung)}</p>}
          </Section>
          <Cautions acts={sheet.cautions} />
          <div className="take-screen-only">
            <Section title={timeText.title}>
              <MeasuredTime study={study} card={card} />
            </Section>
          </div>
          <div className="take-paper-only">
            <Section title={job.notesTitle}>
              <NotePlaces fields={sheet.noteFields} />
            </Section>
          </div>
        </>
      </Beside>
      <div className="actions take-screen-only">
        <ActionLink kind="strong" href={pageAt(pages.card, { id: study.id, code: card.code })}>
          {words.read}
        </ActionLink>
        <ActionLink href={pageAt(pages.checkCard, { id: study.id, code: card.code })}>
          {words.check}
        </ActionLink>
        <Action onPress={() => print()}>{words.print}</Action>
      </div>
      <ByPhone />
    </Page>
  );
};

const putInWords = ({ stock }: Study, { batch, sheet }: Card): string =>
  [
    studyText.stock(stock.material, stockThicknessMm(stock), stock.thicknessReadingsMm.length > 0),
    ...(batch === undefined ? [] : [job.batch(batch)]),
    ...(sheet === undefined ? [] : [job.sheet(sheet)]),
  ].join(' · ');
