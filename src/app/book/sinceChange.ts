import {
  settingOfChange,
  type SettingChange,
  type SinceChange,
} from '../../core/book/settingChange.ts';
import type { ReadSession } from '../ports/ports.ts';

/** What has happened since a change of a kept setting. */
export const sinceChange = async (
  session: ReadSession,
  change: SettingChange,
  now: string,
): Promise<SinceChange> => {
  const { settingId } = change;
  const last = (await session.settingChanges({ settingId, limit: 1 })).found[0];
  const setting = settingOfChange(change);
  const machineId = setting?.holdsFor.machineId;
  const isThere = (await session.entry(settingId))?.id === settingId;
  return {
    now,
    isLast: last?.id === change.id,
    isThere,
    builtOn: await session.builtOnEntry(settingId),
    isCodeTaken: !isThere && setting !== undefined && (await session.codeTaken(setting.code)),
    isMachineGone: machineId !== undefined && (await session.machine(machineId)) === undefined,
  };
};
