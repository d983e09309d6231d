import { pageApi } from '../../../wire/pageApi.ts';
import { useEffect, useState } from 'react';
import type { ProvenSetting } from '../../../core/book/provenSetting.ts';
import { settingKey, type Setting } from '../../../core/machine/setting.ts';
import { halfReadCard } from '../../../core/standing/evidenceFrom.ts';
import { restStayed } from '../../../core/reading/restStayed.ts';
import type { Study } from '../../../core/study/study.ts';
import { answerText as words } from '../../../words/texts.ts';
import { newId } from '../../state/newId.ts';
import { earlierSheetsFor } from '../../state/useEarlier.ts';
import { useWorkshop } from '../../state/workshop.tsx';
import { Action, ActionLink } from '../action/Action.tsx';
import { Notice } from '../notice/Notice.tsx';
import { Said } from '../said/Said.tsx';
import { pageAt, pages } from '../../state/pages.ts';

export interface KeepInBookProps {
  readonly study: Study;
  /** The answer is older than what is shown. */
  readonly behind: boolean;
  /** The one at the head; absent: there is none to keep. */
  readonly speed: Setting | undefined;
  /** What the book has of this sheet already. */
  readonly kept: ProvenSetting | undefined;
}

/**
 * Keeps the speed at the head, with all that it holds for. Pressed while a newer answer is still being calculated, it keeps
 * the newer one. A card that is read in part keeps nothing before somebody said what the rest did.
 */
export const KeepInBook = ({ study, behind, speed, kept: before }: KeepInBookProps) => {
  const { store } = useWorkshop();
  const [kept, setKept] = useState<Kept>();
  const [wanted, setWanted] = useState<'asking' | 'keep'>();
  const [isRestUnseen, setRestUnseen] = useState(false);
  const half = isRestUnseen ? undefined : halfReadCard(study);
  if (wanted === 'asking' && half === undefined) setWanted('keep');
  if (wanted === 'keep' && !behind) {
    setWanted(undefined);
    if (speed !== undefined) setKept({ id: newId(), setting: speed, isRestUnseen });
  }
  useEffect(() => {
    if (kept === undefined) return;
    store.make({
      kind: 'keep',
      studyId: study.id,
      entryId: kept.id,
      setting: kept.setting,
      keptAt: new Date().toISOString(),
      earlierSheets: earlierSheetsFor(study.id),
      ...(kept.isRestUnseen ? { rest: 'not-looked-at' } : {}),
    });
    // Each new `kept` is kept once; the id makes a second sending harmless.
  }, [kept, store, study.id]);
  const inBook = kept ?? before;
  const isKept =
    inBook !== undefined && speed !== undefined && settingKey(inBook.setting) === settingKey(speed);
  if (speed === undefined && inBook === undefined) return null;
  return (
    <>
      <div className="actions">
        {speed === undefined || isKept || wanted !== undefined ? null : (
          <Action kind="strong" calls={pageApi.keepSetting} onPress={() => setWanted('asking')}>
            {words.keepThis(speed)}
          </Action>
        )}
        {inBook === undefined ? null : (
          <>
            <Said what="done">
              <strong>{words.kept(inBook.setting)}</strong>
            </Said>
            <ActionLink href={pageAt(pages.entry, { id: inBook.id })}>{words.openEntry}</ActionLink>
            <ActionLink href={pageAt(pages.label, { id: inBook.id })}>
              {words.printLabel}
            </ActionLink>
          </>
        )}
        <ActionLink href={pageAt(pages.prove, { id: study.id })}>{words.prove}</ActionLink>
        <ActionLink href={pageAt(pages.kerf, { id: study.id })}>{words.kerfAndJoints}</ActionLink>
      </div>
      {wanted !== 'asking' || half === undefined ? null : (
        <Notice tone="care" title={words.rest(half.cells - half.read)}>
          <p>{words.restMore}</p>
          <div className="actions">
            <Action
              onPress={() =>
                store.make({
                  kind: 'read',
                  studyId: study.id,
                  events: restStayed(study, { newId, at: new Date().toISOString() }),
                })
              }
            >
              {words.restStayed}
            </Action>
            <Action onPress={() => setRestUnseen(true)}>{words.restUnseen}</Action>
            <Action kind="quiet" onPress={() => setWanted(undefined)}>
              {words.restLater}
            </Action>
          </div>
        </Notice>
      )}
    </>
  );
};

interface Kept {
  readonly id: string;
  readonly setting: Setting;
  readonly isRestUnseen: boolean;
}
