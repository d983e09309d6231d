import { api } from '../../wire/api.ts';
import { call, type CallOutcome } from './call.ts';
import type { Sent } from './keeper.ts';
import type { Change } from './change.ts';

/** Sends one change by the route that carries it. Every one of them may be sent again without harm. */
export const sendChange = async (change: Change): Promise<CallOutcome<Sent>> => {
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

const sending = (change: Change): Promise<CallOutcome<unknown>> => {
  const params = { id: change.studyId };
  switch (change.kind) {
    case 'start': {
      const { id, createdAt, stock, machine, promise, aim, ask, habit } = change.study;
      const body = { id, createdAt, stock, machine, promise, aim, ask };
      return call(api.startStudy, { body: { ...body, ...(habit === undefined ? {} : { habit }) } });
    }
    case 'head':
      return call(api.changeStudy, { params, body: change.head });
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
