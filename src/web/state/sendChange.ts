import type { WorkshopMachine } from '../../core/machine/workshopMachine.ts';
import { api } from '../../wire/api.ts';
import { call, type CallOutcome } from './call.ts';
import type { Sent } from './keeper.ts';
import type { Change, StudyChange } from './change.ts';
import type { MachineSaid } from './machineChanges.ts';

/** Sends one change by the route that carries it. Every one of them may be sent again without harm. */
export const sendChange = async (change: Change): Promise<CallOutcome<Sent>> => {
  if (!('studyId' in change)) {
    const outcome = await sendingOfMachine(change);
    return outcome.ok ? { ok: true, value: { machine: outcome.value } } : outcome;
  }
  const outcome = await sending(change);
  return outcome.ok ? { ok: true, value: revisionIn(outcome.value) } : outcome;
};

const revisionIn = (reply: unknown): Sent =>
  typeof reply === 'object' &&
  reply !== null &&
  'revision' in reply &&
  typeof reply.revision === 'number'
    ? { revision: reply.revision }
    : {};

const sending = (change: StudyChange): Promise<CallOutcome<unknown>> => {
  const params = { id: change.studyId };
  switch (change.kind) {
    case 'start': {
      const { id, createdAt, stock, machineId, promise, aim, ask, habit } = change.study;
      const body = { id, createdAt, stock, machineId, promise, aim, ask };
      return call(api.startStudy, { body: { ...body, ...(habit === undefined ? {} : { habit }) } });
    }
    case 'head': {
      const { of, ...head } = change.head;
      const body = { ...head, ...(of === undefined ? {} : { machineId: of.id }) };
      return call(api.changeStudy, { params, body });
    }
    case 'add-card':
      return call(api.addCard, { params, body: { card: change.card } });
    case 'replace-card':
      return call(api.replaceCard, {
        params: { ...params, code: change.card.code },
        body: { card: change.card },
      });
    case 'remove-card':
      return call(api.removeCard, { params: { ...params, code: change.code } });
    case 'read':
      return call(api.recordReadings, { params, body: { events: change.events } });
    case 'tally':
      return call(api.recordTally, { params, body: change.tally });
    case 'remove-tally':
      return call(api.removeTally, { params: { ...params, tallyId: change.tallyId } });
    case 'keep': {
      const { entryId, studyId, setting, keptAt, personsChoice, earlierSheets } = change;
      const body = { id: entryId, studyId, setting, keptAt };
      return call(api.keepSetting, {
        body: {
          ...body,
          ...(personsChoice === undefined ? {} : { personsChoice }),
          ...(earlierSheets === undefined ? {} : { earlierSheets }),
        },
      });
    }
  }
};

const sendingOfMachine = (change: MachineSaid): Promise<CallOutcome<WorkshopMachine>> => {
  const params = { id: change.machineId };
  switch (change.kind) {
    case 'describe-machine': {
      const { addedAt, machine, isDefault } = change;
      return call(api.describeMachine, {
        params,
        body: {
          addedAt,
          ...(machine === undefined ? {} : { machine }),
          ...(isDefault === undefined ? {} : { isDefault }),
        },
      });
    }
    case 'note-machine-change':
      return call(api.noteMachineChange, { params, body: change.change });
    case 'remove-machine-change':
      return call(api.removeMachineChange, { params: { ...params, changeId: change.changeId } });
  }
};
