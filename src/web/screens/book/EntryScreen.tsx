import { useMutation, useQueryClient } from '@tanstack/react-query';
import { lazy } from 'react';
import { useLocation } from 'wouter';
import { actsOfKept } from '../../../core/book/actsOfKept.ts';
import { settingKey } from '../../../core/machine/setting.ts';
import { isNotToBeCut } from '../../../core/standing/isNotToBeCut.ts';
import { partLengthOf } from '../../../core/study/promiseOf.ts';
import type { RecordedTally } from '../../../core/study/study.ts';
import { pageApi } from '../../../wire/pageApi.ts';
import { pageWatchApi } from '../../../wire/pageLaterApi.ts';
import {
  answerText,
  bookText as words,
  speedWords,
  standingText,
  shellText,
  tallyText,
} from '../../../words/texts.ts';
import { Action, ActionLink } from '../../parts/action/Action.tsx';
import { SureAction } from '../../parts/action/SureAction.tsx';
import { Cautions } from '../../parts/cautions/Cautions.tsx';
import { Fetched } from '../../parts/fetched/Fetched.tsx';
import { OnlyIfCut } from '../../parts/material/OnlyIfCut.tsx';
import { Notice } from '../../parts/notice/Notice.tsx';
import { Invented } from '../../parts/invented/Invented.tsx';
import { Beside } from '../../parts/page/Beside.tsx';
import { Page, Section } from '../../parts/page/Page.tsx';
import { promiseOfStanding, StandingSays } from '../../parts/standing/StandingSays.tsx';
import { CountedOrder } from '../../parts/tally/CountedOrder.tsx';
import { TallyForm } from '../../parts/tally/TallyForm.tsx';
import { callOrThrow } from '../../state/call.ts';
import { newId } from '../../state/newId.ts';
import { queryKeys, useBookEntry, type BookEntry } from '../../state/queries.ts';
import { fetchPart } from '../../state/fetchPart.ts';
import { usePageStoreState } from '../../state/workshop.tsx';
import { EntryFacts } from './EntryFacts.tsx';
import { NoteOfEntry } from './NoteOfEntry.tsx';
import { OnBed } from './OnBed.tsx';
import { OnlyByAir } from './OnlyByAir.tsx';
import { pageAt, pages } from '../../state/pages.ts';
import './book.css';

/** Fetched beside the entry, which is there before. */
const WatchEntry = lazy(() =>
  fetchPart(async () => ({ default: (await import('../watch/WatchEntry.tsx')).WatchEntry })),
);

/** Fetched beside the entry, too. */
const KeptKerf = lazy(() =>
  fetchPart(async () => ({ default: (await import('../kerf/KeptKerf.tsx')).KeptKerf })),
);

/** And this. */
const MarksOfEntry = lazy(() =>
  fetchPart(async () => ({ default: (await import('../marks/MarksOfEntry.tsx')).MarksOfEntry })),
);

/** And its photographs. */
const SettingPhotos = lazy(() =>
  fetchPart(async () => ({ default: (await import('../photo/SettingPhotos.tsx')).SettingPhotos })),
);

/** Who changed it, for whoever asks. */
const SettingTrail = lazy(() =>
  fetchPart(async () => ({ default: (await import('../people/SettingTrail.tsx')).SettingTrail })),
);

/** One proven setting: what it holds for, where it came from, and its promise checked by orders. */
export const EntryScreen = ({ id }: { readonly id: string }) => {
  const { waiting, sending } = usePageStoreState();
  const { data, isPending, isError, refetch } = useBookEntry(id, sending !== 'sending');
  if (data !== undefined) return <Entry found={data} />;
  return (
    <Page title={words.title}>
      <p>{waiting > 0 ? words.saving : isPending ? shellText.loading : shellText.notFoundMore}</p>
      <div className="actions">
        {isError ? <Action onPress={() => void refetch()}>{shellText.tryAgain}</Action> : null}
        <ActionLink href={pages.book}>{words.back}</ActionLink>
      </div>
    </Page>
  );
};

const Entry = ({ found }: { readonly found: BookEntry }) => {
  const { entry, standing, tallies } = found;
  const [, goTo] = useLocation();
  const cache = useQueryClient();
  const forget = (): void => {
    void cache.invalidateQueries({ queryKey: queryKeys.book });
    void cache.invalidateQueries({ queryKey: queryKeys.home });
  };
  const count = useMutation({
    mutationFn: (tally: Parameters<Parameters<typeof TallyForm>[0]['onSave']>[0]) => {
      const { out, hangs, stays, spoilt, partLengthMm, batch, setting } = tally;
      const at = new Date().toISOString();
      const counts = { out, hangs, stays, spoilt, partLengthMm, setting };
      const body = { ...counts, ...(batch === undefined ? {} : { batch }), id: newId(), at };
      return callOrThrow(pageApi.tallyEntry, { params: { id: entry.id }, body });
    },
    onSuccess: forget,
  });
  const correct = useMutation({
    mutationFn: ({ id: tallyId, ...tally }: RecordedTally) => {
      const { out, hangs, stays, spoilt, partLengthMm, batch } = tally;
      const body = {
        ...{ out, hangs, stays, spoilt, partLengthMm },
        ...(batch === undefined ? {} : { batch }),
      };
      return callOrThrow(pageApi.correctTally, { params: { tallyId }, body });
    },
    onSuccess: forget,
  });
  const uncount = useMutation({
    mutationFn: (tallyId: string) =>
      callOrThrow(pageApi.removeTally, { params: { id: entry.cameFrom.studyId, tallyId } }),
    onSuccess: forget,
  });
  const isRunAsKept =
    standing.run === undefined || settingKey(standing.run) === settingKey(entry.setting);
  const isRefused = isNotToBeCut(standing);
  const settings = isRunAsKept ? [entry.setting] : [standing.run, entry.setting];
  const remove = useMutation({
    mutationFn: () => callOrThrow(pageApi.removeEntry, { params: { id: entry.id } }),
    onSuccess: () => {
      // Forgotten, not asked for once more: it is gone.
      cache.removeQueries({ queryKey: queryKeys.bookEntry(entry.id) });
      forget();
      goTo(pages.book);
    },
  });
  return (
    <Page
      title={isRefused ? standingText.notToBeCut : answerText.cutAt(standing.run ?? entry.setting)}
      lead={[
        ...(isRunAsKept ? [] : [standingText.keptWas(speedWords(entry.setting.speedMmPerS))]),
        promiseOfStanding(standing, entry.surePct),
      ].join(' ')}
      width="two"
    >
      <Beside>
        <>
          <Invented is={entry.isExample} />
          <StandingSays standing={standing} />
          {standing.next === 'cut-strip' ? (
            <div className="actions">
              <ActionLink
                kind="strong"
                calls={pageWatchApi.cutStrip}
                href={`${pageAt(pages.entry, { id: entry.id })}#strip`}
              >
                {standingText.next['cut-strip']}
              </ActionLink>
            </div>
          ) : standing.next === 'cut-card' || standing.next === 'card-that-reaches' ? (
            <div className="actions">
              <ActionLink
                kind="strong"
                calls={pageApi.addCard}
                href={pageAt(pages.newCard, { id: entry.cameFrom.studyId })}
              >
                {standingText.next[standing.next]}
              </ActionLink>
            </div>
          ) : null}
          <OnlyByAir found={found} />
          <OnBed found={found} />
          <EntryFacts entry={entry} promise={standing.promise} />
          <NoteOfEntry entry={entry} />
          <Fetched waiting={null}>
            <SettingPhotos entryId={entry.id} />
          </Fetched>
          <Fetched waiting={null}>
            <KeptKerf entry={entry} />
          </Fetched>
          <Fetched waiting={null}>
            <MarksOfEntry entry={entry} />
          </Fetched>
          <Fetched waiting={null}>
            <SettingTrail settingId={entry.id} onGone={() => goTo(pages.book)} />
          </Fetched>
          {tallies.length === 0 ? null : (
            <Section title={words.checked}>
              <ul className="sheets figure-text">
                {tallies.map((tally) => (
                  <CountedOrder
                    material={entry.holdsFor.material}
                    key={tally.id}
                    tally={tally}
                    onCorrect={(corrected) => correct.mutate(corrected)}
                    onRemove={() => uncount.mutate(tally.id)}
                  />
                ))}
              </ul>
            </Section>
          )}
        </>
        <>
          <Section title={tallyText.title} id="count">
            <p className="soft">{tallyText.lead}</p>
            <TallyForm
              name={entry.id}
              material={entry.holdsFor.material}
              partLengthMm={partLengthOf({ promise: standing.promise, tallies })}
              settings={settings}
              batches={batchesOf(found)}
              {...lastBatchOf(found)}
              onSave={(tally) => count.mutate(tally)}
            />
            {[count, correct, uncount].map(({ error }, i) =>
              error === null ? null : (
                <Notice key={i} tone="stop">
                  <p>{error.message}</p>
                </Notice>
              ),
            )}
          </Section>
          <Fetched waiting={<p>{shellText.loading}</p>}>
            <OnlyIfCut stock={entry.holdsFor} studyId={entry.cameFrom.studyId}>
              <WatchEntry entry={entry} />
            </OnlyIfCut>
          </Fetched>
        </>
      </Beside>
      <Cautions acts={[...actsOfKept(entry, standing.run), 'unattended', 'always']} brief />
      <div className="actions">
        <ActionLink href={pageAt(pages.study, { id: entry.cameFrom.studyId })}>
          {words.openStudy}
        </ActionLink>
        <ActionLink href={`${pages.compare}?sheet=${entry.cameFrom.studyId}`}>
          {words.compare}
        </ActionLink>
        <ActionLink href={pageAt(pages.proveEntry, { id: entry.id })}>
          {answerText.prove}
        </ActionLink>
        <ActionLink href={pageAt(pages.kerfEntry, { id: entry.id })}>
          {answerText.kerfAndJoints}
        </ActionLink>
        <ActionLink href={pageAt(pages.marksEntry, { id: entry.id })}>{words.marks}</ActionLink>
        <ActionLink href={pageAt(pages.label, { id: entry.id })}>
          {answerText.printLabel}
        </ActionLink>
        <ActionLink href={pages.book}>{words.back}</ActionLink>
        <SureAction
          calls={pageApi.removeEntry}
          ask={words.removeAsk(tallies.length)}
          onPress={() => remove.mutate()}
        >
          {words.remove}
        </SureAction>
      </div>
    </Page>
  );
};

/** Batches that were named, the one that was proven first. */
const batchesOf = ({ entry, tallies }: BookEntry): readonly string[] => [
  ...new Set(
    [entry.holdsFor, ...tallies].flatMap(({ batch }) => (batch === undefined ? [] : [batch])),
  ),
];

const lastBatchOf = ({ tallies }: BookEntry): { readonly lastBatch?: string } => {
  const lastBatch = [...tallies].sort((a, b) => (a.at < b.at ? 1 : -1))[0]?.batch;
  return lastBatch === undefined ? {} : { lastBatch };
};
