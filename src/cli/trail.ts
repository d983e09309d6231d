import { settingTrail } from '../app/book/settingTrail.ts';
import { takeBackChange } from '../app/book/takeBackChange.ts';
import { authorNamed } from '../core/author.ts';
import { trailSaid } from '../served/trailSaid.ts';
import { printJson, printOutcome, type ExitCode } from './output.ts';
import { withStore, withStoreToRead } from './withStore.ts';

/** Older ones are asked for over HTTP. */
const lastSoMany = 500;

/** `book changes`: what was done to kept settings and by whom, the last first. */
export const runBookChanges = async (): Promise<ExitCode> => {
  const listed = await withStoreToRead((ports) => settingTrail(ports, { limit: lastSoMany }));
  printJson({ version: 1, ...trailSaid(listed) });
  return 0;
};

/** `book take-back`: takes one of them back, within a day. */
export const runTakeBack = async (
  changeId: string,
  { by }: { readonly by?: string },
): Promise<ExitCode> =>
  printOutcome(
    await withStore((ports) => takeBackChange({ ...ports, ...authorNamed(by) }, changeId)),
    (change) => ({ version: 1, change }),
  );
