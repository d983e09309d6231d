import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { useLocation } from 'wouter';
import type { ProvenSetting } from '../../../core/book/provenSetting.ts';
import { pageWatchApi } from '../../../wire/pageApi.ts';
import { lengthWords } from '../../../words/en/figures.ts';
import { watchText as words } from '../../../words/en/screens/watch.ts';
import { Action } from '../../parts/action/Action.tsx';
import { Choice } from '../../parts/choice/Choice.tsx';
import { Notice } from '../../parts/notice/Notice.tsx';
import { Section } from '../../parts/page/Page.tsx';
import { readList } from '../../parts/quantity/listReader.ts';
import { readThickness } from '../../parts/quantity/readers.ts';
import { TextLine } from '../../parts/quantity/TextLine.tsx';
import { TypedField } from '../../parts/quantity/TypedField.tsx';
import { callOrThrow } from '../../state/call.ts';
import { newId } from '../../state/newId.ts';
import { queryKeys } from '../../state/queries.ts';

const readLengths = readList(readThickness);
const places = ['new-batch', 'reference'] as const;

/** Makes a check strip for the setting and leads to the machine with it. */
export const StripForm = ({ entry }: { readonly entry: ProvenSetting }) => {
  const [of, setOf] = useState<(typeof places)[number]>('new-batch');
  const [batch, setBatch] = useState('');
  const [thicknessReadingsMm, setReadings] = useState<readonly number[]>([]);
  const [, goTo] = useLocation();
  const cache = useQueryClient();
  const make = useMutation({
    mutationFn: () => {
      const named = batch.trim();
      const body = {
        id: newId(),
        of,
        ...(of === 'reference' || named === '' ? {} : { batch: named }),
        ...(thicknessReadingsMm.length === 0 ? {} : { thicknessReadingsMm }),
      };
      return callOrThrow(pageWatchApi.cutStrip, { params: { id: entry.id }, body });
    },
    onSuccess: ({ studyId, card }) => {
      void cache.invalidateQueries({ queryKey: queryKeys.book });
      void cache.invalidateQueries({ queryKey: queryKeys.home });
      goTo(`/study/${studyId}/card/${card.code}/machine`);
    },
  });
  return (
    <Section title={words.stripTitle} id="strip">
      <p className="soft">{words.stripLead}</p>
      <Choice
        label={words.stripOf}
        lay="list"
        value={of}
        options={places.map((value) => ({
          value,
          label: words.stripIn[value],
          more: words.stripInMore[value],
        }))}
        onChange={setOf}
      />
      {of === 'new-batch' ? (
        <TextLine label={words.batch} hint={words.batchHint} value={batch} onChange={setBatch} />
      ) : null}
      <TypedField
        label={words.thickness}
        hint={words.thicknessHint}
        value={thicknessReadingsMm}
        show={(values) => values.map(lengthWords).join(', ')}
        parse={readLengths}
        onChange={setReadings}
      />
      {make.isError ? (
        <Notice tone="stop">
          <p>{make.error.message}</p>
        </Notice>
      ) : null}
      <div className="actions">
        <Action onPress={() => make.mutate()} isDisabled={make.isPending}>
          {words.make}
        </Action>
      </div>
    </Section>
  );
};
