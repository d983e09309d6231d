import type { WorkshopMachine } from '../../core/machine/workshopMachine.ts';
import { pageApi, pageOrderApi } from '../../wire/pageApi.ts';
import { call, type CallOutcome } from './call.ts';
import type { Change, StudyChange } from './change.ts';
import type { MachineSaid } from './machineChanges.ts';
import type { Sent } from './sender.ts';

/** Sends one change by the route that carries it. Every one of them may be sent again without harm. */
export const sendChange = async (change: Change, stop: AbortSignal): Promise<CallOutcome<Sent>> => {
  if (!('studyId' in change)) {
    const outcome = await sendingOfMachine(change, stop);
    return outcome.ok ? { ok: true, value: { machine: outcome.value } } : outcome;
  }
  const outcome = await sending(change, stop);
  return outcome.ok ? { ok: true, value: revisionIn(outcome.value) } : outcome;
};

const revisionIn = (reply: unknown): Sent =>
  typeof reply === 'object' &&
  reply !== null &&
  'revision' in reply &&
  typeof reply.revision === 'number'
    ? { revision: reply.revision }
    : {};

const sending = (change: StudyChange, stop: AbortSignal): Promise<CallOutcome<unknown>> => {
  const params = { id: change.studyId };
  switch (change.kind) {
    case 'start': {
      const { id, createdAt, stock, machineId, promise, aim, ask, habit } = change.study;
      const body = { id, createdAt, stock, machineId, promise, aim, ask };
      return call(pageApi.startStudy, {
        stop,
        body: { ...body, ...(habit === undefined ? {} : { habit }) },
      });
    }
    case 'head': {
      const { of, ...head } = change.head;
      const body = { ...head, ...(of === undefined ? {} : { machineId: of.id }) };
      return call(pageApi.changeStudy, { stop, params, body });
    }
    case 'put-on-bed':
      return call(pageApi.putOnBed, { stop, params });
    case 'remove-study':
      return call(pageApi.removeStudy, { stop, params });
    case 'put-back-study':
      return call(pageApi.putBackStudy, { stop, params });
    case 'add-card':
      return call(pageApi.addCard, { stop, params, body: { card: change.card } });
    case 'replace-card':
      return call(pageApi.replaceCard, {
        stop,
        params: { ...params, code: change.card.code },
        body: { card: change.card },
      });
    case 'note-card':
      return call(pageApi.noteCard, {
        stop,
        params: { ...params, code: change.code },
        body: { note: change.note },
      });
    case 'remove-card':
      return call(pageApi.removeCard, { stop, params: { ...params, code: change.code } });
    case 'read':
      return call(pageApi.recordReadings, { stop, params, body: { events: change.events } });
    case 'keep-order': {
      const { id: orderId, ...body } = change.order;
      return call(pageOrderApi.keepOrder, { stop, params: { ...params, orderId }, body });
    }
    case 'remove-order':
      return call(pageOrderApi.removeOrder, {
        stop,
        params: { ...params, orderId: change.orderId },
      });
    case 'tally':
      return call(pageApi.recordTally, { stop, params, body: change.tally });
    case 'correct-tally': {
      const { id: tallyId, out, hangs, stays, spoilt, partLengthMm, batch, sheet } = change.tally;
      const body = {
        ...{ out, hangs, stays, spoilt, partLengthMm },
        ...(batch === undefined ? {} : { batch }),
        ...(sheet === undefined ? {} : { sheet }),
      };
      return call(pageApi.correctTally, { stop, params: { tallyId }, body });
    }
    case 'remove-tally':
      return call(pageApi.removeTally, { stop, params: { ...params, tallyId: change.tallyId } });
    case 'keep': {
      const { entryId, studyId, setting, keptAt, personsChoice, earlierSheets, rest } = change;
      const body = { id: entryId, studyId, setting, keptAt };
      return call(pageApi.keepSetting, {
        stop,
        body: {
          ...body,
          ...(personsChoice === undefined ? {} : { personsChoice }),
          ...(earlierSheets === undefined ? {} : { earlierSheets }),
          ...(rest === undefined ? {} : { rest }),
        },
      });
    }
  }
};

const sendingOfMachine = (
  change: MachineSaid,
  stop: AbortSignal,
): Promise<CallOutcome<WorkshopMachine>> => {
  const params = { id: change.machineId };
  switch (change.kind) {
    case 'describe-machine': {
      const { addedAt, machine, isDefault } = change;
      return call(pageApi.describeMachine, {
        stop,
        params,
        body: {
          addedAt,
          ...(machine === undefined ? {} : { machine }),
          ...(isDefault === undefined ? {} : { isDefault }),
        },
      });
    }
    case 'note-machine-change':
      return call(pageApi.noteMachineChange, { stop, params, body: change.change });
    case 'remove-machine-change':
      return call(pageApi.removeMachineChange, {
        stop,
        params: { ...params, changeId: change.changeId },
      });
  }
};
