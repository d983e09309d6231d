import type { Card } from '../../core/card/card.ts';
import type { Ask } from '../../core/cutmodel/cutStudy.ts';
import type { WorkshopMachine } from '../../core/machine/workshopMachine.ts';
import type { Setting } from '../../core/machine/setting.ts';
import type { PromiseWish } from '../../core/reading/promise.ts';
import type { ReadingEvent } from '../../core/reading/readingEvent.ts';
import type { Habit } from '../../core/reading/tally.ts';
import type { Stock } from '../../core/stock/stock.ts';
import type { StartedOrder } from '../../core/study/startedOrder.ts';
import type { RecordedTally, Study } from '../../core/study/study.ts';
import type { Aim } from '../../core/cutmodel/aims.ts';
import { withOptional } from './withOptional.ts';
import { changesAfter, type MachineSaid } from './machineChanges.ts';

/** What of a study's head may be replaced. `habit: null` takes it away. */
export interface HeadChange {
  readonly stock?: Stock;
  /** Another machine, as it stands now: the server is told its id. */
  readonly of?: Pick<WorkshopMachine, 'id' | 'machine' | 'changes'>;
  readonly promise?: PromiseWish;
  readonly aim?: Aim;
  readonly ask?: Ask;
  readonly habit?: Habit | null;
}

/**
 * One thing that a person did on this page, to a study or to a machine. It is shown at once, kept in the browser, and sent as soon as the
 * server hears it. Each can be sent, and applied, twice with the result of once.
 */
export type Change = StudyChange | MachineSaid;

export type StudyChange = { readonly studyId: string } & (
  | { readonly kind: 'start'; readonly study: Study }
  | { readonly kind: 'put-on-bed' }
  | { readonly kind: 'remove-study' }
  /** A removed sheet back; one that the server has not heard of as removed just stays. */
  | { readonly kind: 'put-back-study' }
  | { readonly kind: 'head'; readonly head: HeadChange }
  | { readonly kind: 'add-card'; readonly card: Card }
  | { readonly kind: 'replace-card'; readonly card: Card }
  /** Null: it is taken away. */
  | { readonly kind: 'note-card'; readonly code: string; readonly note: string | null }
  | { readonly kind: 'remove-card'; readonly code: string }
  | { readonly kind: 'read'; readonly events: readonly ReadingEvent[] }
  /** A new order, or what is said anew of one. */
  | { readonly kind: 'keep-order'; readonly order: StartedOrder }
  | { readonly kind: 'remove-order'; readonly orderId: string }
  | { readonly kind: 'tally'; readonly tally: RecordedTally }
  | { readonly kind: 'correct-tally'; readonly tally: RecordedTally }
  | { readonly kind: 'remove-tally'; readonly tallyId: string }
  /** Goes to the book, not into the study; travels with the rest so that the server has the readings first. */
  | {
      readonly kind: 'keep';
      readonly entryId: string;
      readonly setting: Setting;
      readonly keptAt: string;
      readonly personsChoice?: string;
      /** As the answer was shown from which it is kept. */
      readonly earlierSheets?: 'with' | 'without';
      /** Where a card was read in part: that the rest was not looked at. */
      readonly rest?: 'not-looked-at';
    }
);

/** Whether a change is of this study, or of its machine. */
export const concerns = (
  change: Change,
  { id, machineId }: { readonly id: string; readonly machineId: string | undefined },
): boolean => ('studyId' in change ? change.studyId === id : change.machineId === machineId);

/**
 * The sheet or the machine that a change is of, and whatever must be known to the server first: a sheet is of a machine.
 */
export const subjectsOf = (change: Change): readonly [own: string, ...named: string[]] => {
  if (!('studyId' in change)) return [`machine ${change.machineId}`];
  const machineId =
    change.kind === 'start'
      ? change.study.machineId
      : change.kind === 'head'
        ? change.head.of?.id
        : undefined;
  return machineId === undefined ? [change.studyId] : [change.studyId, `machine ${machineId}`];
};

/** The study after the change. Undefined stays undefined until the study is started. */
export const applied = (study: Study | undefined, change: Change): Study | undefined => {
  if (change.kind === 'start') return study ?? change.study;
  return study === undefined ? undefined : appliedTo(study, change);
};

const appliedTo = (study: Study, change: Exclude<Change, { kind: 'start' }>): Study | undefined => {
  switch (change.kind) {
    case 'head':
      return withHead(study, change.head);
    case 'add-card':
      return study.cards.some(({ code }) => code === change.card.code)
        ? study
        : { ...study, cards: [...study.cards, change.card] };
    case 'replace-card':
      return {
        ...study,
        cards: study.cards.map((card) => (card.code === change.card.code ? change.card : card)),
      };
    case 'note-card':
      return {
        ...study,
        cards: study.cards.map((card) =>
          card.code === change.code ? withOptional(card, 'note', change.note ?? undefined) : card,
        ),
      };
    case 'remove-card':
      return {
        ...study,
        cards: study.cards.filter(({ code }) => code !== change.code),
        events: study.events.filter(({ cardCode }) => cardCode !== change.code),
      };
    case 'read':
      return { ...study, events: [...study.events, ...unknownTo(study, change.events)] };
    case 'keep-order':
      return withOrder(study, change.order);
    case 'remove-order':
      return {
        ...study,
        orders: (study.orders ?? []).filter(({ id }) => id !== change.orderId),
      };
    case 'tally':
      return study.tallies.some(({ id }) => id === change.tally.id)
        ? study
        : { ...study, tallies: [...study.tallies, change.tally] };
    case 'correct-tally':
      return {
        ...study,
        tallies: study.tallies.map((one) => (one.id === change.tally.id ? change.tally : one)),
      };
    case 'remove-tally':
      return { ...study, tallies: study.tallies.filter(({ id }) => id !== change.tallyId) };
    case 'keep':
    case 'put-on-bed':
    case 'put-back-study':
      return study;
    case 'remove-study':
      return undefined;
    case 'describe-machine':
      return change.machine === undefined ? study : { ...study, machine: change.machine };
    case 'note-machine-change':
    case 'remove-machine-change':
      return { ...study, machineChanges: changesAfter(study.machineChanges, change) };
  }
};

/** The same without removals that were taken back. */
export const withoutTakenBack = (changes: readonly Change[]): readonly Change[] => {
  const lastBack = changes.findLastIndex(({ kind }) => kind === 'put-back-study');
  return changes.filter(({ kind }, place) => kind !== 'remove-study' || place > lastBack);
};

const unknownTo = (study: Study, events: readonly ReadingEvent[]): readonly ReadingEvent[] => {
  const known = new Set(study.events.map(({ id }) => id));
  return events.filter(({ id }) => !known.has(id));
};

const withOrder = (study: Study, order: StartedOrder): Study => {
  const before = study.orders ?? [];
  return {
    ...study,
    orders: before.some(({ id }) => id === order.id)
      ? before.map((one) => (one.id === order.id ? order : one))
      : [...before, order],
  };
};

const withHead = (study: Study, { habit, of, ...head }: HeadChange): Study => {
  const { habit: before, ...rest } = study;
  const ofMachine =
    of === undefined ? {} : { machineId: of.id, machine: of.machine, machineChanges: of.changes };
  const after = habit === undefined ? before : (habit ?? undefined);
  return { ...rest, ...head, ...ofMachine, ...(after === undefined ? {} : { habit: after }) };
};
