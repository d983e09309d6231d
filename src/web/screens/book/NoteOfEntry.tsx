import { useMutation, useQueryClient } from '@tanstack/react-query';
import type { ProvenSetting } from '../../../core/book/provenSetting.ts';
import { pageApi } from '../../../wire/pageApi.ts';
import { noteText as words } from '../../../words/texts.ts';
import { NoteOf } from '../../parts/note/NoteOf.tsx';
import { Notice } from '../../parts/notice/Notice.tsx';
import { callOrThrow } from '../../state/call.ts';
import { queryKeys } from '../../state/queries.ts';

/** The note of a kept setting. */
export const NoteOfEntry = ({ entry: { id, note } }: { readonly entry: ProvenSetting }) => {
  const cache = useQueryClient();
  const keep = useMutation({
    mutationFn: (said: string | undefined) =>
      callOrThrow(pageApi.changeEntry, { params: { id }, body: { note: said ?? null } }),
    onSuccess: () => cache.invalidateQueries({ queryKey: queryKeys.book }),
  });
  return (
    <>
      <NoteOf
        calls={pageApi.changeEntry}
        name={`entry.${id}`}
        kind="entry"
        label={words.of.entry}
        note={note}
        onKeep={(said) => keep.mutate(said)}
      />
      {keep.isError ? (
        <Notice tone="stop">
          <p>{keep.error.message}</p>
        </Notice>
      ) : null}
    </>
  );
};
