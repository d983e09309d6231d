import { watchText as words, watchVerdictText } from '../../../words/texts.ts';
import { More } from '../../parts/more/More.tsx';
import { ActionLink } from '../../parts/action/Action.tsx';
import { Section } from '../../parts/page/Page.tsx';
import { together } from '../../state/inWords.ts';
import type { Watched } from './useWatch.ts';
import { pageAt, pages } from '../../state/pages.ts';

/** The check strips that were made for a setting, each with its verdict in words. */
export const CheckStrips = ({ strips }: Pick<Watched, 'strips'>) => (
  <Section title={words.strips}>
    <ul className="watch-strips">
      {strips.map((strip) => {
        const card = pageAt(pages.card, { id: strip.studyId, code: strip.code });
        const isUnread = strip.verdict === 'unread';
        return (
          <li key={strip.code} className={`watch-strip watch-${strip.verdict}`}>
            <p className="soft">
              {words.stripLine(strip.of, strip.batch)} · {new Date(strip.at).toLocaleDateString()} ·{' '}
              <span className="figure-text">{strip.code}</span>
            </p>
            <p className="watch-verdict">{together(strip.message)}</p>
            <p>{together(strip.more)}</p>
            <div className="actions">
              <ActionLink kind={isUnread ? 'plain' : 'quiet'} href={card}>
                {isUnread ? words.read : words.open}
              </ActionLink>
              {isUnread ? (
                <ActionLink href={`${card}/machine`}>{words.toMachine}</ActionLink>
              ) : null}
            </div>
          </li>
        );
      })}
    </ul>
    <More title={words.rule}>
      <p>{watchVerdictText.rule}</p>
    </More>
  </Section>
);
