import { troubleText as words } from '../../../words/texts.ts';
import { ActionLink } from '../../parts/action/Action.tsx';
import { Looks } from '../../parts/looks/Looks.tsx';
import { Notice } from '../../parts/notice/Notice.tsx';
import { Beside } from '../../parts/page/Beside.tsx';
import { Page, Section } from '../../parts/page/Page.tsx';
import { StripsToCut } from './StripsToCut.tsx';
import { pages } from '../../state/pages.ts';

/** Parts stopped coming out: the laser or the wood, cheapest look first. */
export const TroubleScreen = () => (
  <Page title={words.title} lead={words.lead} width="two">
    <Notice tone="care" title={words.careTitle}>
      <p>{words.care}</p>
    </Notice>
    <Beside>
      <Section title={words.first}>
        <p className="soft">{words.firstMore}</p>
        <Looks looks={words.checks} numbered />
      </Section>
      <>
        <Section title={words.wood}>
          <Looks looks={words.woodMore} />
        </Section>
        <StripsToCut />
        <Section title={words.tell}>
          <p>{words.tellMore}</p>
          <div className="actions">
            <ActionLink href={pages.newSheet}>{words.newCard}</ActionLink>
            <ActionLink href={pages.book}>{words.count}</ActionLink>
          </div>
        </Section>
      </>
    </Beside>
  </Page>
);
