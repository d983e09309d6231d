import { pageTrailApi } from '../../../wire/pageTrailApi.ts';
import { useState } from 'react';
import { kindOfChange, settingOfChange } from '../../../core/book/settingChange.ts';
import type { trailApi } from '../../../wire/trailApi.ts';
import type { ReplyOf } from '../../../wire/route.ts';
import { noteText, peopleText as words } from '../../../words/texts.ts';
import { Action } from '../../parts/action/Action.tsx';
import { More } from '../../parts/more/More.tsx';
import { Notice } from '../../parts/notice/Notice.tsx';
import { useSettingTrail, useTakeBack } from '../../state/settingTrail.ts';
import './people.css';

/** So many stand there at first, and come with each asking for more. */
const pageOf = 10;
/** More than that nobody scrolls. */
const mostShown = 500;

export interface SettingTrailProps {
  /** Absent: of every setting. */
  readonly settingId?: string;
  /** The setting is not in the book any more. */
  readonly onGone?: (settingId: string) => void;
}

/** Who changed which kept setting, for whoever asks; what was done last is taken back here. */
export const SettingTrail = ({ settingId, onGone = () => undefined }: SettingTrailProps) => {
  const [shown, setShown] = useState(pageOf);
  const { data } = useSettingTrail(settingId, shown);
  const takeBack = useTakeBack(onGone);
  // Settings from before there was a trail have none.
  if (data === undefined || (data.total === 0 && settingId !== undefined)) return null;
  const { changes, total } = data;
  return (
    <More title={settingId === undefined ? words.trail : words.trailOfOne}>
      <p className="small soft">{total === 0 ? words.empty : words.trailLead}</p>
      <ol className="trail">
        {changes.map((line) => (
          <TrailLine
            key={line.change.id}
            line={line}
            isBusy={takeBack.isPending}
            onTakeBack={() => takeBack.mutate(line.change.id)}
          />
        ))}
      </ol>
      {takeBack.isError ? (
        <Notice tone="stop">
          <p>{takeBack.error.message}</p>
        </Notice>
      ) : null}
      {total <= changes.length || shown >= mostShown ? null : (
        <div className="actions">
          <Action kind="quiet" onPress={() => setShown(shown + pageOf)}>
            {words.showMore(changes.length, total)}
          </Action>
        </div>
      )}
    </More>
  );
};

interface TrailLineProps {
  readonly line: ReplyOf<typeof trailApi.listSettingChanges>['changes'][number];
  readonly isBusy: boolean;
  readonly onTakeBack: () => void;
}

const TrailLine = ({
  line: { change, isTakenBack, mayTakeBack, held },
  isBusy,
  onTakeBack,
}: TrailLineProps) => {
  const { by, at, before, undoes } = change;
  const said = undoes === undefined ? words.done : words.takenBack;
  const kind = kindOfChange(change);
  const what = said[kind](by, settingOfChange(change)?.code ?? '');
  const noteBefore = kind === 'noted' ? before?.note : undefined;
  return (
    <li className="trail-line">
      <span>
        {what} <span className="small soft">{words.when(at)}</span>
      </span>
      {noteBefore === undefined ? null : (
        <span className="small soft">{words.noteBefore(noteText.inList(noteBefore))}</span>
      )}
      {isTakenBack ? <span className="small soft">{words.isTakenBack}</span> : null}
      {held === undefined ? null : <span className="small soft">{held.message}</span>}
      {mayTakeBack ? (
        <span className="actions">
          <Action
            calls={pageTrailApi.takeBackSettingChange}
            label={words.takeBackThis(what)}
            isDisabled={isBusy}
            onPress={onTakeBack}
          >
            {words.takeBack}
          </Action>
        </span>
      ) : null}
    </li>
  );
};
