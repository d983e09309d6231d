import { pagePhotoApi } from '../../../wire/pageLaterApi.ts';
import { IfMay } from '../../parts/action/IfMay.tsx';
import { useState } from 'react';
import { settingSubjects, type SettingSubject } from '../../../core/marking/settingSubjects.ts';
import { essentialCautions } from '../../../words/cautions.ts';
import { settingPhotoText as words } from '../../../words/texts.ts';
import { SureAction } from '../../parts/action/SureAction.tsx';
import { Choice } from '../../parts/choice/Choice.tsx';
import { More } from '../../parts/more/More.tsx';
import { Notice, ProblemNotice } from '../../parts/notice/Notice.tsx';
import { Said } from '../../parts/said/Said.tsx';
import type { CallProblem } from '../../state/call.ts';
import {
  settingPhotoAddress,
  useKeepSettingPhotos,
  useSettingPhotos,
} from '../../state/settingPhotos.ts';
import { KeptPicture } from './KeptPicture.tsx';
import { PhotoPick } from '../../parts/photo/PhotoPick.tsx';
import './photo.css';

/** How a photograph fares that was picked. */
type Sent = 'keeping' | 'kept' | CallProblem;

/** The photographs of a kept setting and of the marks beside it: one of each, small; and how to keep another. */
export const SettingPhotos = ({ entryId }: { readonly entryId: string }) => {
  const { data } = useSettingPhotos(entryId);
  const { keep, remove } = useKeepSettingPhotos(entryId);
  const [subject, setSubject] = useState<SettingSubject>('cut');
  const [sent, setSent] = useState<Sent>();
  const pick = (photo: File): void => {
    setSent('keeping');
    void keep(subject, photo).then((outcome) => setSent(outcome.ok ? 'kept' : outcome.why));
  };
  const photos = data?.photos ?? [];
  return (
    <div className="stack">
      {photos.length === 0 ? null : (
        <ul className="photo-kept">
          {photos.map(({ subject: of, keptAt, widthPx, heightPx }) => (
            <li key={of}>
              <KeptPicture
                address={settingPhotoAddress(entryId, of, keptAt)}
                alt={words.kept(of)}
                widthPx={widthPx}
                heightPx={heightPx}
              />
              <SureAction
                calls={pagePhotoApi.removeSettingPhoto}
                ask={words.removeAsk}
                onPress={() => void remove(of)}
              >
                {words.remove(of)}
              </SureAction>
            </li>
          ))}
        </ul>
      )}
      <IfMay call={pagePhotoApi.keepSettingPhoto}>
        <More title={words.title}>
          <div className="stack">
            <p className="small soft">{words.more}</p>
            {essentialCautions(['photo']).map(({ sentence }) => (
              <p key={sentence}>{sentence}</p>
            ))}
            <Choice
              label={words.of}
              value={subject}
              options={settingSubjects.map((value) => ({ value, label: words.subjects[value] }))}
              onChange={setSubject}
            />
            {photos.some(({ subject: of }) => of === subject) ? (
              <p className="small">{words.replaces}</p>
            ) : null}
            <PhotoPick
              key={sent === 'kept' ? photos.length : 'pick'}
              labels={words}
              onPick={pick}
            />
            {sent === undefined ? null : sent === 'keeping' ? (
              <p aria-busy="true">{words.keeping}</p>
            ) : sent === 'kept' ? (
              <Said what="done">{words.keptSaid}</Said>
            ) : (
              <NotKept why={sent} />
            )}
          </div>
        </More>
      </IfMay>
    </div>
  );
};

const NotKept = ({ why }: { readonly why: CallProblem }) =>
  why.kind === 'refused' ? (
    <Notice tone="stop" title={why.message}>
      <p>{why.remedy}</p>
    </Notice>
  ) : (
    <ProblemNotice tone="stop" problem={why.problem} />
  );
