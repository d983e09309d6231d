import type { ProvenSetting } from '../../core/book/provenSetting.ts';
import type { SettingChange, SinceChange } from '../../core/book/settingChange.ts';
import type { Card } from '../../core/card/card.ts';
import type { MachineTestName } from '../../core/machineTests.ts';
import type { SettingSubject } from '../../core/marking/settingSubjects.ts';
import type { PhotoSide } from '../../core/photo/photoSide.ts';
import type { Outcome, ProblemOf } from '../../core/problem.ts';
import type { ReadingEvent } from '../../core/reading/readingEvent.ts';
import type { WorkshopMachine } from '../../core/machine/workshopMachine.ts';
import type { StartedOrder } from '../../core/study/startedOrder.ts';
import type { Sought } from '../../core/search/sought.ts';
import type { Stock } from '../../core/stock/stock.ts';
import type { RecordedTally, SavedStudy } from '../../core/study/study.ts';
import type { MachineTestOf } from '../../formats/machineTests.ts';
import type { Model } from '../sums/model.ts';
import type { StoredChange } from './storedChange.ts';
import type {
  CardAt,
  PhotoKept,
  SettingPhotoKept,
  StoredPhoto,
  StoredSettingPhoto,
} from './pictures.ts';
import type { StoredStudy, StudyHead, StudySummary } from './stored.ts';

/** Tells the time. */
export interface Clock {
  /** ISO 8601, UTC, with milliseconds. */
  readonly now: () => string;
}

/** Makes names that nothing else has. */
export interface Ids {
  readonly newId: () => string;
  /** Four characters that are not easily taken for one another. The caller checks that it is free. */
  readonly newCode: () => string;
}

/** What a use-case may touch beside its input. */
export interface Ports {
  readonly store: Store;
  readonly clock: Clock;
  readonly ids: Ids;
}

/** The same for a use-case that asks for sums. */
export interface AskingPorts extends Ports {
  readonly model: Model;
}

/**
 * Where a workshop's things are kept. Work is done in sessions: all of a session's changes are kept, or none. A session
 * ends unkept when its work is refused or throws. Once `change` has resolved, what it kept survives the loss of power.
 */
export interface Store {
  readonly read: <T>(work: (session: ReadSession) => Promise<T>) => Promise<T>;
  /** The same for work that reads all that there is: while it goes on, other sessions do not wait for its end. */
  readonly readLong: Store['read'];
  readonly change: <T>(work: (session: Session) => Promise<Outcome<T>>) => Promise<Outcome<T>>;
  /**
   * Hears what other programs at work in the same store have announced, from now on; `{}` where something may have been
   * missed. Gives a way to stop hearing. An engine that tells of no other never calls it.
   */
  readonly hear: (listener: (change: StoredChange) => void) => () => void;
  readonly close: () => Promise<void>;
}

/**
 * Lists pass over what cannot be read (`passedOver` names it): one damaged row does not hide the rest. A single thing
 * that cannot be read throws the store's `store-row-unreadable`.
 */
export interface ReadSession {
  /** What this session's lists have passed over so far, each named. */
  readonly passedOver: () => readonly ProblemOf<'store-row-unreadable'>[];
  /** The last touched first. */
  readonly summaries: () => Promise<readonly StudySummary[]>;
  /** A stretch of them. It costs what the stretch holds, however many there are. */
  readonly listSheets: (asked: SheetsAsked) => Promise<Listed<StudySummary>>;
  /** One of them. */
  readonly sheet: (id: string) => Promise<StudySummary | undefined>;
  /** Names of the sheets of one kind, the last touched first. */
  readonly sheetsOfKind: (kind: SheetKind) => Promise<readonly string[]>;
  /** The one last put on the bed, the workshop's own before the example's. */
  readonly onBed: () => Promise<StudySummary | undefined>;
  /** Those that were removed and can come back, the last removed first. */
  readonly removedStudies: () => Promise<readonly RemovedStudy[]>;
  /** Whether there is anything of the workshop's own, and of the example. */
  readonly holds: () => Promise<{ readonly own: boolean; readonly example: boolean }>;
  readonly study: (id: string) => Promise<StoredStudy | undefined>;
  /** The same without those of its parts that cannot be read; they are passed over. */
  readonly studyAsReadable: (id: string) => Promise<StoredStudy | undefined>;
  /** A study's cards and where it stands, without what was said of them: what a tap needs. */
  readonly cardsOf: (studyId: string) => Promise<StudyCards | undefined>;
  /** Photographs kept with a card, the front before the back; none where there is no such card. */
  readonly photosOf: (card: CardAt) => Promise<readonly PhotoKept[]>;
  readonly photo: (card: CardAt, side: PhotoSide) => Promise<StoredPhoto | undefined>;
  /** Photographs kept with a kept setting, what it cuts before the marks beside it. */
  readonly settingPhotosOf: (entryId: string) => Promise<readonly SettingPhotoKept[]>;
  readonly settingPhoto: (
    entryId: string,
    subject: SettingSubject,
  ) => Promise<StoredSettingPhoto | undefined>;
  /** The tally of a study that was stored last. */
  readonly lastTallyOf: (studyId: string) => Promise<RecordedTally | undefined>;
  /** The setting last kept from a study. */
  readonly keptFrom: (studyId: string) => Promise<ProvenSetting | undefined>;
  /** As they were added. */
  readonly machines: () => Promise<readonly WorkshopMachine[]>;
  readonly machine: (id: string) => Promise<WorkshopMachine | undefined>;
  /** How many sheets, kept settings, meterings and tests are of it. */
  readonly machineUse: (id: string) => Promise<number>;
  /** Whether a card or a proven setting has this code. */
  readonly codeTaken: (code: string) => Promise<boolean>;
  /** The last kept first. */
  readonly entries: () => Promise<readonly ProvenSetting[]>;
  /** A stretch of them; those for the sheet on the bed first, its batch before others, where one is said. */
  readonly listEntries: (asked: EntriesAsked) => Promise<Listed<ProvenSetting>>;
  /** Those of one material on one machine, the last kept first. */
  readonly entriesOfKind: (
    kind: StockKind & { readonly limit: number },
  ) => Promise<readonly ProvenSetting[]>;
  /** Those of the very same stock on the same machine that differ from it only by air. */
  readonly entriesOnlyByAir: (entry: ProvenSetting) => Promise<readonly ProvenSetting[]>;
  /** By id, or by the code on its label (the last kept, should two have it). */
  readonly entry: (idOrCode: string) => Promise<ProvenSetting | undefined>;
  /** What was done to kept settings, the last first. */
  readonly settingChanges: (asked: ChangesAsked) => Promise<Listed<SettingChange>>;
  readonly settingChange: (id: string) => Promise<SettingChange | undefined>;
  /** The change that takes this one back. */
  readonly undoOfChange: (id: string) => Promise<SettingChange | undefined>;
  /** What was made with a kept setting. */
  readonly builtOnEntry: (entryId: string) => Promise<SinceChange['builtOn']>;
  /** The study that an order was started on. */
  readonly studyOfOrder: (orderId: string) => Promise<string | undefined>;
  readonly tally: (id: string) => Promise<StoredTally | undefined>;
  /** In the order in which they were stored. */
  readonly talliesOfEntry: (entryId: string) => Promise<readonly RecordedTally[]>;
  /** Tallies of proven settings whose study is gone. */
  readonly looseTallies: () => Promise<readonly RecordedTally[]>;
  /** Tests of machines of one kind, the latest first. */
  readonly machineTests: <Name extends MachineTestName>(
    name: Name,
  ) => Promise<readonly MachineTestOf<Name>[]>;
  readonly machineTest: <Name extends MachineTestName>(
    name: Name,
    id: string,
  ) => Promise<MachineTestOf<Name> | undefined>;
}

/** A stretch of a list. */
export interface Stretch {
  /** Absent: from the first. */
  readonly from?: number;
  /** Absent: to the last. */
  readonly limit?: number;
}

export interface ListAsked extends Stretch {
  /** Absent: whatever there is. */
  readonly sought?: Sought;
}

export interface SheetsAsked extends ListAsked {
  /** Only sheets of this kind, but for one. */
  readonly kind?: StockKind & { readonly except: string };
}

export interface EntriesAsked extends ListAsked {
  /** The sheet on the bed. */
  readonly onBed?: Stock;
  /** Only those that were kept from this sheet. */
  readonly studyId?: string;
}

export interface ChangesAsked {
  /** Only those of this setting. */
  readonly settingId?: string;
  readonly limit: number;
}

export interface Listed<T> {
  readonly found: readonly T[];
  /** How many fit, in this stretch or not. */
  readonly total: number;
}

/** Sheets, or settings, of one material. */
export interface StockKind {
  readonly isExample: boolean;
  /** Asked once of each name that there is. */
  readonly isSameMaterial: (name: string) => boolean;
  /** Absent: on any machine. Without an id: nobody knows on which. */
  readonly machine?: { readonly id: string | undefined };
}

export interface SheetKind extends StockKind {
  readonly except: string;
  /** Thickness to reckon with. Absent: any. */
  readonly thicknessMm?: { readonly least: number; readonly most: number };
  /** ISO 8601, UTC. Absent: whenever they were begun. */
  readonly begunSince?: string;
  readonly limit: number;
}

export interface RemovedStudy {
  readonly study: SavedStudy;
  /** ISO 8601, UTC. */
  readonly removedAt: string;
}

export interface StudyCards {
  readonly cards: readonly Card[];
  readonly revision: number;
}

export interface StoredTally {
  readonly tally: RecordedTally;
  /** Absent: its study is gone. */
  readonly studyId?: string;
}

/** A study that a change of its machine has changed too. */
export interface StudyRevised {
  readonly studyId: string;
  readonly revision: number;
}

export interface Session extends ReadSession {
  readonly insertMachine: (machine: WorkshopMachine) => Promise<void>;
  /** Gives the studies of it, whose revisions rise where what is known of the machine, or what was changed on it, is other than before. */
  readonly replaceMachine: (machine: WorkshopMachine) => Promise<readonly StudyRevised[]>;
  /** None but one that nothing is of. */
  readonly deleteMachine: (id: string) => Promise<void>;
  /**
   * With all its cards, events and tallies; its machine must be there. Tallies whose id is known are passed over. It lies on
   * the bed, unless it is there for a strip.
   */
  readonly insertStudy: (study: SavedStudy, touchedAt: string) => Promise<void>;
  readonly replaceHead: (studyId: string, head: StudyHead) => Promise<void>;
  /**
   * Its cards, events and tallies go too, but for tallies of a proven setting. Its photographs stay while it can come back.
   */
  readonly deleteStudy: (studyId: string) => Promise<void>;
  /** Marks a study as changed now and gives its new revision. */
  readonly touch: (studyId: string, at: string) => Promise<number>;
  readonly putOnBed: (studyId: string, at: string) => Promise<void>;
  /** Keeps a removed study beside, in the place of the oldest where there are many. */
  readonly keepRemoved: (removed: RemovedStudy) => Promise<void>;
  readonly forgetRemoved: (studyId: string) => Promise<void>;
  /** Gives tallies that stayed without their study to it again. */
  readonly takeBackTallies: (studyId: string, ids: readonly string[]) => Promise<void>;
  readonly insertCard: (studyId: string, card: Card) => Promise<void>;
  readonly replaceCard: (studyId: string, card: Card) => Promise<void>;
  /** In the place of the one of this side, where there is one. */
  readonly keepPhoto: (card: CardAt, photo: StoredPhoto) => Promise<void>;
  readonly deletePhoto: (card: CardAt, side: PhotoSide) => Promise<void>;
  /** In the place of the one of this subject, where there is one. Its setting must be there. */
  readonly keepSettingPhoto: (entryId: string, photo: StoredSettingPhoto) => Promise<void>;
  readonly deleteSettingPhoto: (entryId: string, subject: SettingSubject) => Promise<void>;
  /** Its events and photographs go too. */
  readonly deleteCard: (studyId: string, code: string) => Promise<void>;
  /** In this order, behind those that are there. Gives how many were new; known ids are passed over. */
  readonly appendEvents: (studyId: string, events: readonly ReadingEvent[]) => Promise<number>;
  /**
   * Puts a study's events in this order. All that are there must be among them (else it throws: nothing said is lost);
   * those that are not there yet are added. Gives how many were new.
   */
  readonly arrangeEvents: (studyId: string, events: readonly ReadingEvent[]) => Promise<number>;
  /** A new order, or what is said anew of one that is there. */
  readonly keepOrder: (studyId: string, order: StartedOrder) => Promise<void>;
  /** Its counts stay. */
  readonly deleteOrder: (id: string) => Promise<void>;
  readonly insertTally: (studyId: string | undefined, tally: RecordedTally) => Promise<void>;
  /** The tally of this id, in the place that it has. */
  readonly replaceTally: (tally: RecordedTally) => Promise<void>;
  readonly deleteTally: (id: string) => Promise<void>;
  readonly insertEntry: (entry: ProvenSetting) => Promise<void>;
  /** What is said anew of the one of this id, in the place that it has. */
  readonly replaceEntry: (entry: ProvenSetting) => Promise<void>;
  /** Its photographs go too. Its tallies stay with their studies; those without one go. */
  readonly deleteEntry: (id: string) => Promise<void>;
  /**
   * Adds a change behind those that are there; of one that takes a setting out, before it is taken out, with what goes with
   * it. Throws where another has taken back the same change.
   */
  readonly noteChange: (change: SettingChange) => Promise<void>;
  /** Puts a setting back that this change took out, where it stood, with its photographs and its counts. */
  readonly putBackEntry: (changeId: string, entry: ProvenSetting) => Promise<void>;
  readonly insertMachineTest: <Name extends MachineTestName>(
    name: Name,
    test: MachineTestOf<Name>,
  ) => Promise<void>;
  readonly deleteMachineTest: (name: MachineTestName, id: string) => Promise<void>;
  /** Tells other programs at work in the same store, once this session is kept and not before. */
  readonly announce: (changes: readonly StoredChange[]) => Promise<void>;
  /** Every machine, study, proven setting, tally and test of the example workshop. */
  readonly deleteExample: () => Promise<void>;
}
