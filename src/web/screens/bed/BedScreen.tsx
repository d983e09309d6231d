import { pageApi } from '../../../wire/pageApi.ts';
import { pageWatchApi } from '../../../wire/pageLaterApi.ts';
import { useSearch } from 'wouter';
import { stockThicknessMm } from '../../../core/stock/stockThickness.ts';
import { standingText, bedText as words, studyText, shellText } from '../../../words/texts.ts';
import { ActionLink } from '../../parts/action/Action.tsx';
import { ExampleBanner } from '../../parts/example/ExampleBanner.tsx';
import { Invented } from '../../parts/invented/Invented.tsx';
import { OnlyIfCut } from '../../parts/material/OnlyIfCut.tsx';
import { Notice } from '../../parts/notice/Notice.tsx';
import { OrderLink } from '../../parts/order/OrderLink.tsx';
import { Beside } from '../../parts/page/Beside.tsx';
import { Page, Section } from '../../parts/page/Page.tsx';
import { useHome } from '../../state/queries.ts';
import { Doors } from '../first/Doors.tsx';
import { ExampleDoor } from '../first/ExampleDoor.tsx';
import { BackupsFail } from './BackupsFail.tsx';
import { KeptSetting } from './KeptSetting.tsx';
import { OtherSheets } from './OtherSheets.tsx';
import { RemovedSheets } from './RemovedSheets.tsx';
import { OpenReading } from './OpenReading.tsx';
import { Unsent } from './Unsent.tsx';
import { pageAt, pages } from '../../state/pages.ts';

/** The sheet on the bed: its setting, its promise and its last order; the same sheet again, or a new one. */
export const BedScreen = () => {
  const { data: home, isPending } = useHome();
  const justRemoved = new URLSearchParams(useSearch()).get('removed') ?? undefined;
  if (isPending) return <p className="page-wait">{shellText.loading}</p>;
  if (home === undefined)
    return (
      <Page title={words.away} lead={words.awayMore}>
        <Unsent />
        <Doors />
      </Page>
    );
  const { latest } = home;
  const removed = <RemovedSheets removed={home.removed ?? []} justNow={justRemoved} />;
  if (latest === undefined) {
    return (
      <Page title={words.nothing} lead={words.nothingMore}>
        <BackupsFail />
        <Unsent />
        {removed}
        <Doors />
        <ExampleDoor />
      </Page>
    );
  }
  const { study, kept, standing, lastTally } = latest;
  const measured = study.stock.thicknessReadingsMm.length > 0;
  return (
    <Page
      title={words.title}
      lead={studyText.stock(study.stock.material, stockThicknessMm(study.stock), measured)}
      width="two"
    >
      <Beside>
        <>
          <ExampleBanner />
          <Invented is={study.isExample} />
          <BackupsFail />
          {home.unreadable?.map(({ message, remedy }) => (
            <Notice key={message} tone="care">
              <p>
                {message} {remedy}
              </p>
            </Notice>
          ))}
          {kept === undefined || standing === undefined ? (
            <>
              <Unsent studyId={study.id} />
              <OpenReading studyId={study.id} />
            </>
          ) : (
            <OnlyIfCut stock={kept.holdsFor} studyId={study.id}>
              <Unsent studyId={study.id} isNotCounted />
              <KeptSetting entry={kept} standing={standing} lastTally={lastTally} />
              <div className="actions">
                {standing.next === 'cut-strip' ? (
                  <ActionLink
                    kind="strong"
                    calls={pageWatchApi.cutStrip}
                    href={`${pageAt(pages.entry, { id: kept.id })}#strip`}
                  >
                    {standingText.next['cut-strip']}
                  </ActionLink>
                ) : null}
                <ActionLink
                  kind={standing.next === 'cut-strip' ? 'plain' : 'strong'}
                  href={`${pageAt(pages.entry, { id: kept.id })}#count`}
                >
                  {words.same}
                </ActionLink>
                <OrderLink studyId={study.id} />
                <ActionLink href={pageAt(pages.study, { id: study.id })}>{words.open}</ActionLink>
                <ActionLink calls={pageApi.startStudy} href={pages.newSheet}>
                  {words.newOne}
                </ActionLink>
              </div>
            </OnlyIfCut>
          )}
        </>
        <>
          <Section title={words.elsewhere}>
            <Doors />
          </Section>
          <OtherSheets except={study.id} />
          {removed}
          {home.exampleOpen ? null : <ExampleDoor />}
        </>
      </Beside>
    </Page>
  );
};
