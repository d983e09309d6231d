import { pageWatchApi } from '../../../wire/pageLaterApi.ts';
import { IfMay } from '../../parts/action/IfMay.tsx';
import type { ProvenSetting } from '../../../core/book/provenSetting.ts';
import { shellText, watchText as words, watchVerdictText } from '../../../words/texts.ts';
import { More } from '../../parts/more/More.tsx';
import { Notice } from '../../parts/notice/Notice.tsx';
import { Section } from '../../parts/page/Page.tsx';
import { CauseSays } from './CauseSays.tsx';
import { CheckStrips } from './CheckStrips.tsx';
import { StripForm } from './StripForm.tsx';
import { useWatch, type Watched } from './useWatch.ts';
import { WatchKey, WatchPicture } from './WatchPicture.tsx';
import './watch.css';

/** Whether a proven setting still holds: its chart, its check strips, and where to look if not. */
export const WatchEntry = ({ entry }: { readonly entry: ProvenSetting }) => {
  const { data, isPending } = useWatch(entry.id);
  return (
    <>
      <Section title={words.title} id="watch">
        {data === undefined ? (
          <p>{isPending ? shellText.loading : words.away}</p>
        ) : (
          <Standing watched={data} />
        )}
      </Section>
      {data === undefined ? null : <CauseSays watched={data} />}
      {data === undefined || data.strips.length === 0 ? null : <CheckStrips strips={data.strips} />}
      <IfMay call={pageWatchApi.cutStrip}>
        <StripForm entry={entry} />
      </IfMay>
    </>
  );
};

const Standing = ({ watched }: { readonly watched: Watched }) => {
  const { standing, points, ordersPerFalseAlarm } = watched;
  return (
    <div className="stack">
      <Notice
        tone={standing === 'alarm' ? 'care' : 'say'}
        title={watchVerdictText.standing(watched)}
      >
        {null}
      </Notice>
      {points.length === 0 ? null : (
        <>
          <div>
            <WatchPicture watched={watched} />
            <WatchKey watched={watched} />
          </div>
          <More title={words.oneByOne}>
            <Counts points={points} />
          </More>
          <More title={words.how}>
            {words.howMore(ordersPerFalseAlarm).map((line) => (
              <p key={line}>{line}</p>
            ))}
          </More>
        </>
      )}
    </div>
  );
};

const Counts = ({ points }: { readonly points: Watched['points'] }) => (
  <table className="watch-counts figure-text">
    <thead>
      <tr>
        <th scope="col">{words.when}</th>
        <th scope="col">{words.what}</th>
        <th scope="col">{words.notOut}</th>
        <th scope="col">{words.foreseenNotOut}</th>
        <th scope="col">{words.said}</th>
      </tr>
    </thead>
    <tbody>
      {points.toReversed().map((point) => (
        <tr key={point.id}>
          <th scope="row">{new Date(point.at).toLocaleDateString()}</th>
          <td>{words.counted(point.kind, point.batch)}</td>
          <td>{words.of(point.notOut, point.parts)}</td>
          <td>{point.foreseenNotOut.toFixed(1)}</td>
          <td>{words.pointSays(point.alarm, point.score)}</td>
        </tr>
      ))}
    </tbody>
  </table>
);
