import { z } from 'zod';
import { takeBackHours } from '../core/book/settingChange.ts';
import { id } from '../formats/saved/bounds.ts';
import { settingChangeShape } from '../formats/saved/settingChange.ts';
import { saidInFull } from './problem.ts';
import { route } from './route.ts';
import { trailAddresses } from './trailAddresses.ts';

const trailQuery = z.strictObject({
  /** Only what was done to this setting, by its id. */
  settingId: id.exactOptional(),
  /** The last so many; absent: 25. */
  limit: z.coerce.number().int().min(1).max(500).exactOptional(),
});

const trailLine = z.strictObject({
  change: settingChangeShape,
  isTakenBack: z.boolean(),
  mayTakeBack: z.boolean(),
  /** What stands against taking it back, where it is of the last day and nothing was done to the setting since. */
  held: saidInFull.exactOptional(),
});

/** Who did what to kept settings. */
export const trailApi = {
  listSettingChanges: route({
    ...trailAddresses.listSettingChanges,
    summary: 'What was done to kept settings and by whom, the last first',
    query: trailQuery,
    reply: z.strictObject({ changes: z.array(trailLine), total: z.number().int() }),
  }),
  takeBackSettingChange: route({
    ...trailAddresses.takeBackSettingChange,
    summary: `Take a change of a kept setting back, within ${String(takeBackHours)} hours: it stands as before`,
    params: z.strictObject({ changeId: id }),
    reply: z.strictObject({ change: settingChangeShape }),
  }),
} as const;
