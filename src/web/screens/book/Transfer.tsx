import { IfMay } from '../../parts/action/IfMay.tsx';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { importedFileShape } from '../../../formats/exportFile.ts';
import { pageApi } from '../../../wire/pageApi.ts';
import { addressOf } from '../../../wire/route.ts';
import { refuseImportBySize } from '../../../wire/importLimit.ts';
import { bookText as words } from '../../../words/texts.ts';
import { DownloadLink } from '../../parts/action/DownloadLink.tsx';
import { FilePick } from '../../parts/file/FilePick.tsx';
import { Notice } from '../../parts/notice/Notice.tsx';
import { callOrThrow } from '../../state/call.ts';
import { workshopReach } from '../../state/reach.ts';
import { Said } from '../../parts/said/Said.tsx';

/** A file of many years is written in one go. */
const importTakesAtMostMs = 300_000;

/** Everything out into a file, and a file in. */
export const Transfer = () => {
  const cache = useQueryClient();
  const bringIn = useMutation({
    mutationFn: (text: string) => {
      const read = importedFileShape.safeParse(parsed(text));
      if (!read.success) throw new Error(words.notOurs);
      return callOrThrow(pageApi.importAll, { body: read.data, timeLimitMs: importTakesAtMostMs });
    },
    onSuccess: () => cache.invalidateQueries(),
  });
  return (
    <div className="stack">
      <div className="actions">
        <DownloadLink href={addressOf(pageApi.exportAll)} fileName="throughcut.json">
          {words.exportAll}
        </DownloadLink>
        <DownloadLink href={addressOf(pageApi.exportBookTable)} fileName="throughcut-book.csv">
          {words.exportTable}
        </DownloadLink>
        <DownloadLink href={addressOf(pageApi.exportCellTable)} fileName="throughcut-cells.csv">
          {words.exportCells}
        </DownloadLink>
      </div>
      {workshopReach().isServed ? (
        <div className="stack">
          <div className="actions">
            <DownloadLink href="/throughcut.html" fileName="throughcut.html">
              {words.alone}
            </DownloadLink>
          </div>
          <p className="small soft">{words.aloneMore}</p>
        </div>
      ) : null}
      <IfMay call={pageApi.importAll}>
        <FilePick
          label={words.importAll}
          accept=".json"
          refuse={refuseImportBySize}
          onText={(_name, text) => bringIn.mutate(text)}
        />
      </IfMay>
      {bringIn.isError ? (
        <Notice tone="stop">
          <p>{bringIn.error.message}</p>
        </Notice>
      ) : null}
      {bringIn.data === undefined ? null : (
        <>
          <Said what="done">
            {words.imported(bringIn.data.added.studies, bringIn.data.added.provenSettings)}
          </Said>
          {bringIn.data.notAdvised.map(({ message, remedy }) => (
            <Notice key={message} tone="care" title={message}>
              <p>{remedy}</p>
            </Notice>
          ))}
        </>
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
