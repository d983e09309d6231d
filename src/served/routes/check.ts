import { andThen, done, type Outcome } from '../../core/problem.ts';
import { parseCardFile } from '../../formats/cardFile.ts';
import { checkReportFile } from '../../formats/checkReportFile.ts';
import { parseMachineFile } from '../../formats/machineFile.ts';
import { checkApi as api } from '../../wire/checkApi.ts';
import { importBytesAtMost } from '../../wire/importLimit.ts';
import { problemInWords } from '../../words/words.ts';
import type { Site } from '../site.ts';
import type { ServedPorts } from '../servedPorts.ts';

/** The check of a file, in a thread: a large one is read for seconds. */
export const checkRoutes = (site: Site, ports: ServedPorts): void => {
  site.put(
    api.checkFile,
    async ({ body, gone }) => {
      const card = given(body.card, (said) => parseCardFile(JSON.stringify(said)));
      if (!card.ok) return card;
      const machine = given(body.machine, parseMachineFile);
      if (!machine.ok) return machine;
      const checked = await ports.until(gone).model.ask('checkFile', {
        text: body.text,
        ...(card.value === undefined ? {} : { card: card.value }),
        ...(machine.value === undefined ? {} : { machine: machine.value }),
      });
      return andThen(checked, (found) =>
        done({ version: 1 as const, ...checkReportFile(found, problemInWords) }),
      );
    },
    { bodyLimit: importBytesAtMost },
  );
};

const given = <T>(said: unknown, parse: (said: unknown) => Outcome<T>): Outcome<T | undefined> =>
  said === undefined ? done(undefined) : parse(said);
