import type { Card } from '../card/card.ts';
import type { CutStudy } from '../cutmodel/cutStudy.ts';
import { lastChange, type MachineChange } from '../machine/machineChange.ts';
import type { Study } from './study.ts';

type Changed = Pick<Study, 'machineChanges'>;

/**
 * The batch of something as the model takes it: what was cut before a change of the machine is of another one than what was
 * cut since, and what was cut between two changes of a third. Absent: it names none, and nothing was changed since.
 */
export const batchOf = (
  { machineChanges }: Changed,
  batch: string | undefined,
  at: string | undefined,
): { readonly batch?: string } => {
  const until = at === undefined ? undefined : firstAfter(machineChanges, at);
  if (until !== undefined) return { batch: `${batch ?? ''} (until ${until.at})` };
  return batch === undefined ? {} : { batch };
};

/** When a card was cut, as far as anybody knows: when it was first read. */
export const cutAt = ({ events }: Pick<Study, 'events'>, { code }: Card): string | undefined => {
  let [first, firstMs]: [string | undefined, number] = [undefined, Infinity];
  for (const { cardCode, at } of events) {
    if (cardCode !== code) continue;
    const ms = Date.parse(at);
    if (first === undefined || ms < firstMs) [first, firstMs] = [at, ms];
  }
  return first;
};

/** For which batch the answer is where something was cut before a change; and what was changed, where all of it was. */
export const sinceChange = (study: Study): Pick<CutStudy, 'presentBatch' | 'machineChanged'> => {
  const last = lastChange(study.machineChanges);
  if (last === undefined) return {};
  const read = study.cards.flatMap((card) => {
    const at = cutAt(study, card);
    return at === undefined ? [] : [{ at, batch: card.batch }];
  });
  // As the model has it: what was cut last is the last card read, else the last order.
  const cut = [...study.tallies.map(({ at, batch }) => ({ at, batch })), ...read];
  const isFormer = ({ at }: { readonly at: string }): boolean =>
    Date.parse(at) < Date.parse(last.at);
  if (!cut.some(isFormer)) return {};
  const present = cut.findLast((each) => !isFormer(each)) ?? cut.at(-1);
  return {
    presentBatch: present?.batch ?? '',
    ...(cut.every(isFormer)
      ? { machineChanged: { what: last.what, day: last.at.slice(0, 10) } }
      : {}),
  };
};

const firstAfter = (changes: readonly MachineChange[], at: string): MachineChange | undefined =>
  changes
    .filter((change) => Date.parse(change.at) > Date.parse(at))
    .reduce<MachineChange | undefined>(
      (first, each) =>
        first === undefined || Date.parse(each.at) < Date.parse(first.at) ? each : first,
      undefined,
    );
