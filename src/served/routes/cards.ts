import { describeCard } from '../../app/card/describeCard.ts';
import { noteCard } from '../../app/card/noteCard.ts';
import { readCardForExport } from '../../app/card/readCardForExport.ts';
import { removeCard } from '../../app/card/removeCard.ts';
import { replaceCard } from '../../app/card/replaceCard.ts';
import { done } from '../../core/problem.ts';
import { problemInWords } from '../../words/words.ts';
import { api } from '../../wire/api.ts';
import { storedCardFile } from '../files/makeCardFile.ts';
import type { Printer } from '../files/printer.ts';
import { unitsAsked } from '../unitsAsked.ts';
import { FileAnswer } from '../fileAnswer.ts';
import type { Site } from '../site.ts';
import type { ServedPorts } from '../servedPorts.ts';

export const cardRoutes = (site: Site, ports: ServedPorts, printer: Printer): void => {
  site.put(api.addCard, async ({ params, body, gone }) => {
    if ('card' in body) return describeCard(ports, params.id, body.card);
    const { designNewCard } = await import('../../app/card/designNewCard.ts');
    const designed = await designNewCard(ports.until(gone), params.id, body.request);
    if (!designed.ok) return designed;
    const remarks = designed.value.remarks.map((remark) => {
      const { code, message } = problemInWords(remark);
      return { code, message };
    });
    return done({ ...designed.value, remarks });
  });
  site.put(api.replaceCard, ({ params, body }) =>
    replaceCard(ports, params.id, params.code, body.card),
  );
  site.put(api.noteCard, ({ params, body }) => noteCard(ports, params.id, params.code, body.note));
  site.put(api.removeCard, async ({ params }) => {
    const removed = await removeCard(ports, params.id, params.code);
    return removed.ok ? done({ removed: true }) : removed;
  });
  site.put(api.cardFile, async ({ params: { id, code, kind }, query, gone }) => {
    const found = await readCardForExport(ports, id, code);
    if (!found.ok) return found;
    const { model } = ports.until(gone);
    const wanted = { kind, ...unitsAsked(query) };
    const file = await storedCardFile(found.value, wanted, { model, printer });
    if (!file.ok) return file;
    return done(new FileAnswer({ ...file.value, name: `card-${code}.${kind}` }));
  });
};
