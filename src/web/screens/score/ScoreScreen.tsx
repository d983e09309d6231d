import { useQuery } from '@tanstack/react-query';
import { pageScoreApi } from '../../../wire/pageLaterApi.ts';
import { addressOf, type ReplyOf } from '../../../wire/route.ts';
import type { scoreApi } from '../../../wire/score.ts';
import { scoreText as words, shellText } from '../../../words/texts.ts';
import { Action, ActionLink } from '../../parts/action/Action.tsx';
import { DownloadLink } from '../../parts/action/DownloadLink.tsx';
import { More } from '../../parts/more/More.tsx';
import { Page, Section } from '../../parts/page/Page.tsx';
import { callOrThrow } from '../../state/call.ts';
import { CalibrationPicture } from './CalibrationPicture.tsx';
import { pages } from '../../state/pages.ts';
import './score.css';

type Score = ReplyOf<typeof scoreApi.scorePromises>;
type Group = Score['groups'][number];

/** What was promised in this workshop, held against what came. */
export const ScoreScreen = () => {
  const { data, isPending, isError, refetch } = useQuery({
    queryKey: ['score'],
    queryFn: () => callOrThrow(pageScoreApi.scorePromises),
    // Another sheet may have been counted since.
    gcTime: 0,
  });
  return (
    <Page title={words.title} lead={words.lead} width="wide">
      {isPending ? <p>{shellText.loading}</p> : null}
      {isError ? (
        <div className="actions">
          <Action onPress={() => void refetch()}>{shellText.tryAgain}</Action>
        </div>
      ) : null}
      {data === undefined ? null : <Scored score={data} />}
    </Page>
  );
};

const Scored = ({ score }: { readonly score: Score }) => {
  const [all, ...others] = score.groups;
  if (all === undefined)
    return (
      <div className="stack">
        <p className="score-verdict">{words.none}</p>
        <p>{words.noneMore}</p>
        <div className="actions">
          <ActionLink href={pages.bed}>{shellText.bed}</ActionLink>
        </div>
      </div>
    );
  return (
    <>
      <Says group={all} />
      <Section title={words.picture}>
        <p className="soft">{words.pictureLead}</p>
        <CalibrationPicture bins={all.bins} />
      </Section>
      {(['material', 'machine'] as const).map((by) => {
        const groups = others.filter((group) => group.by === by);
        return groups.length === 0 ? null : (
          <Section key={by} title={words.by[by]}>
            <dl className="score-groups">
              {groups.map((group) => (
                <div key={group.name}>
                  <dt>{group.name}</dt>
                  {group.promises.map((promise) => (
                    <dd key={promise.promisedOutOf100}>{words.line(promise)}</dd>
                  ))}
                </div>
              ))}
            </dl>
          </Section>
        );
      })}
      <More title={words.how}>
        <p>{words.howMore}</p>
      </More>
      <Section title={words.give}>
        <p>{words.giveMore}</p>
        <div className="actions">
          <DownloadLink
            href={addressOf(pageScoreApi.exportCounts)}
            fileName="throughcut-counts.json"
          >
            {words.download}
          </DownloadLink>
          <Action onPress={() => print()}>{words.print}</Action>
        </div>
      </Section>
    </>
  );
};

const Says = ({ group }: { readonly group: Group }) => (
  <ul className="score-says">
    {group.promises.map((promise) => (
      <li key={promise.promisedOutOf100} className={`score-line score-${promise.verdict}`}>
        <p className="score-verdict">{words.line(promise)}</p>
        <p>
          {words.worse(promise)} <span className="soft">{words.effect(promise)}</span>
        </p>
      </li>
    ))}
  </ul>
);
