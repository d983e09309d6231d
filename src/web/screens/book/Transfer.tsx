import { useMutation, useQueryClient } from '@tanstack/react-query';
import { importedFileShape } from '../../../formats/exportFile.ts';
import { addressOf, api } from '../../../wire/api.ts';
import { refuseImportBySize } from '../../../wire/importLimit.ts';
import { bookText as words } from '../../../words/en/screens/book.ts';
import { DownloadLink } from '../../parts/action/Action.tsx';
import { FilePick } from '../../parts/file/FilePick.tsx';
import { Notice } from '../../parts/notice/Notice.tsx';
import { callOrThrow } from '../../state/call.ts';

/** Everything out into a file, and a file in. */
export const Transfer = () => {
  const cache = useQueryClient();
  const bringIn = useMutation({
    mutationFn: (text: string) => {
      const read = importedFileShape.safeParse(parsed(text));
      if (!read.success) throw new Error(words.notOurs);
      return callOrThrow(api.importAll, { body: read.data });
    },
    onSuccess: () => cache.invalidateQueries(),
  });
  return (
    <div className="stack">
      <div className="actions">
        <DownloadLink href={addressOf(api.exportAll)} fileName="throughcut.json">
          {words.exportAll}
        </DownloadLink>
        <DownloadLink href={addressOf(api.exportBookTable)} fileName="throughcut-book.csv">
          {words.exportTable}
        </DownloadLink>
      </div>
      <FilePick
        label={words.importAll}
        accept=".json"
        refuse={refuseImportBySize}
        onText={(_name, text) => bringIn.mutate(text)}
      />
      {bringIn.isError ? (
        <Notice tone="stop">
          <p>{bringIn.error.message}</p>
        </Notice>
      ) : null}
      {bringIn.data === undefined ? null : (
        <p role="status">
          {words.imported(bringIn.data.added.studies, bringIn.data.added.provenSettings)}
        </p>
      )}
    </div>
  );
};

const parsed = (text: string): unknown => {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
};
