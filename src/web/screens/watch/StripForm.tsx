import { useState } from 'react';
import type { Problem } from '../../../core/problem.ts';
import { stripBatch } from '../../../core/watch/stripBatch.ts';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useLocation } from 'wouter';
import type { ProvenSetting } from '../../../core/book/provenSetting.ts';
import { pageWatchApi } from '../../../wire/pageLaterApi.ts';
import { lengthWords, watchText as words } from '../../../words/texts.ts';
import { Action } from '../../parts/action/Action.tsx';
import { Choice } from '../../parts/choice/Choice.tsx';
import { Form } from '../../parts/form/Form.tsx';
import { Notice } from '../../parts/notice/Notice.tsx';
import { Section } from '../../parts/page/Page.tsx';
import { readList } from '../../parts/quantity/listReader.ts';
import { readThickness } from '../../parts/quantity/readers.ts';
import { TextLine } from '../../parts/quantity/TextLine.tsx';
import { TypedField } from '../../parts/quantity/TypedField.tsx';
import { CallFailed, callOrThrow, whyInWords } from '../../state/call.ts';
import { newId } from '../../state/newId.ts';
import { queryKeys } from '../../state/queries.ts';
import { useDraft } from '../../state/useDraft.ts';
import { pageAt, pages } from '../../state/pages.ts';

const readLengths = readList(readThickness);
const places = ['new-batch', 'reference'] as const;

interface Draft {
  readonly of: (typeof places)[number];
  readonly batch: string;
  readonly thicknessReadingsMm: readonly number[];
}

const blank: Draft = { of: 'new-batch', batch: '', thicknessReadingsMm: [] };

/** Makes a check strip for the setting and leads to the machine with it. */
export const StripForm = ({ entry }: { readonly entry: ProvenSetting }) => {
  const [draft, setDraft, sent] = useDraft({ name: `strip.${entry.id}`, initial: blank });
  const change = (part: Partial<Draft>): void => setDraft({ ...draft, ...part });
  const { of, batch, thicknessReadingsMm } = draft;
  const [refused, setRefused] = useState<Problem>();
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
      sent();
      void cache.invalidateQueries({ queryKey: queryKeys.book });
      void cache.invalidateQueries({ queryKey: queryKeys.home });
      goTo(pageAt(pages.takeCard, { id: studyId, code: card.code }));
    },
  });
  return (
    <Section title={words.stripTitle} id="strip">
      <p className="soft">{words.stripLead}</p>
      <Form
        onSend={() => {
          const named = stripBatch(entry.holdsFor.batch, draft);
          setRefused(named.ok ? undefined : named.problem);
          if (named.ok) make.mutate();
        }}
      >
        <Choice
          label={words.stripOf}
          lay="list"
          value={of}
          options={places.map((value) => ({
            value,
            label: words.stripIn[value],
            more: words.stripInMore[value],
          }))}
          onChange={(next) => {
            setRefused(undefined);
            change({ of: next });
          }}
        />
        {of === 'new-batch' ? (
          <TextLine
            label={words.batch}
            hint={words.batchHint}
            value={batch}
            problem={refused}
            onChange={(next) => {
              setRefused(undefined);
              change({ batch: next });
            }}
          />
        ) : null}
        <TypedField
          label={words.thickness}
          hint={words.thicknessHint}
          value={thicknessReadingsMm}
          show={(values) => values.map(lengthWords).join(', ')}
          parse={readLengths}
          onChange={(next) => change({ thicknessReadingsMm: next })}
        />
        {make.isError ? <NotMade error={make.error} /> : null}
        <div className="actions">
          <Action submits isDisabled={make.isPending}>
            {words.make}
          </Action>
        </div>
      </Form>
    </Section>
  );
};

/** Why there is no strip, and what would make one possible. */
const NotMade = ({ error }: { readonly error: Error }) => {
  const { message, remedy } =
    error instanceof CallFailed ? whyInWords(error.why) : { message: error.message, remedy: '' };
  return (
    <Notice tone="stop" title={message}>
      <p>{remedy}</p>
    </Notice>
  );
};
