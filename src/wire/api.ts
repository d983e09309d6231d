import { cardFileKinds } from '../formats/machineFiles.ts';
import { z } from 'zod';
import { byTestList } from '../core/machineTests.ts';
import { exportFileShape, importedFileShape } from '../formats/exportFile.ts';
import { id } from '../formats/saved/bounds.ts';
import { workshopMachineShape } from '../formats/saved/workshopMachine.ts';
import { provenSettingShape } from '../formats/saved/provenSetting.ts';
import { recordedTallyShape } from '../formats/saved/tally.ts';
import { addresses } from './addresses.ts';
import {
  fitReply,
  nextCardQuery,
  nextCardReply,
  studyAnswerQuery,
  studyAnswerReply,
  studyFileBody,
} from './answer.ts';
import {
  bookEntry,
  bookEntryRead,
  byEntry,
  changeEntryBody,
  keptLikeQuery,
  keepSettingBody,
  searchBookQuery,
  tallyEntryBody,
} from './book.ts';
import { addCardBody, byCard, cardReply, noteCardBody, replaceCardBody } from './card.ts';
import { historyQuery, historyReply } from './history.ts';
import { byRampKind, rampFileQuery } from './focus.ts';
import { backupsReply, healthReply, homeReply } from './home.ts';
import {
  byMachine,
  byMachineChange,
  describeMachineBody,
  noteMachineChangeBody,
} from './machine.ts';
import { judgeMaterialQuery, materialJudged } from './material.ts';
import { machineTestApi } from './machineTestApi.ts';
import { byTwoMeterings, compareQuery, compareReply } from './metering.ts';
import {
  byPhone,
  changePhoneBody,
  openPairingQuery,
  pairBody,
  pairingReply,
  pairReply,
  phoneLetIn,
} from './pairing.ts';
import { saidInFull } from './problem.ts';
import { route } from './route.ts';
import { unitsWanted } from './unitsWanted.ts';
import {
  byStudy,
  changeStudyBody,
  listStudiesQuery,
  correctTallyBody,
  recordReadingsBody,
  recordReadingsReply,
  recordTallyBody,
  startStudyBody,
  storedStudy,
  studySummary,
} from './study.ts';

const gone = z.strictObject({ removed: z.boolean() });
const byTally = z.strictObject({ id, tallyId: id });
const revised = z.strictObject({ revision: z.number().int() });
const tallied = z.strictObject({ tally: recordedTallyShape, revision: z.number().int() });
const counts = z.strictObject({
  machines: z.number().int(),
  studies: z.number().int(),
  cards: z.number().int(),
  events: z.number().int(),
  tallies: z.number().int(),
  provenSettings: z.number().int(),
  ...byTestList(() => z.number().int()),
});

/** What is known of a machine is for every sheet of it. */
const describes = { machine: addresses.describeMachine.least };

/** Every route of the server, by the verb that it carries out. */
export const api = {
  health: route({
    ...addresses.health,
    summary: 'Whether the server is up',
    reply: healthReply,
  }),
  backups: route({
    ...addresses.backups,
    summary: 'How the backups on a schedule stand',
    reply: backupsReply,
  }),
  home: route({
    ...addresses.home,
    summary: 'What the first screen needs',
    reply: homeReply,
  }),

  live: route({
    ...addresses.live,
    summary: 'A stream of server-sent events: one whenever something stored has changed',
  }),

  listStudies: route({
    ...addresses.listStudies,
    summary: 'Sheets that fit all the words, the last touched first',
    query: listStudiesQuery,
    reply: z.strictObject({ studies: z.array(studySummary), total: z.number().int() }),
  }),
  startStudy: route({
    ...addresses.startStudy,
    summary: 'Begin a sheet; sending the same id again changes nothing',
    body: startStudyBody,
    leastToSay: describes,
    reply: storedStudy,
  }),
  getStudy: route({
    ...addresses.getStudy,
    summary: 'One sheet, whole',
    params: byStudy,
    reply: storedStudy,
  }),
  changeStudy: route({
    ...addresses.changeStudy,
    summary: 'Replace its stock, promise, aim, ask or habit; name or describe its machine',
    params: byStudy,
    body: changeStudyBody,
    leastToSay: describes,
    reply: storedStudy,
  }),
  removeStudy: route({
    ...addresses.removeStudy,
    summary: 'Remove a sheet with its cards and readings; what was kept in the book stays',
    params: byStudy,
    reply: gone,
  }),
  putBackStudy: route({
    ...addresses.putBackStudy,
    summary: 'Bring a removed sheet back as it was',
    params: byStudy,
    reply: storedStudy,
  }),
  putOnBed: route({
    ...addresses.putOnBed,
    summary: 'Say that a sheet lies on the bed now',
    params: byStudy,
    reply: z.strictObject({ onBed: z.boolean() }),
  }),

  listMachines: route({
    ...addresses.listMachines,
    summary: 'The machines of the workshop, as they were added',
    reply: z.strictObject({ machines: z.array(workshopMachineShape) }),
  }),
  describeMachine: route({
    ...addresses.describeMachine,
    summary: 'Say what is known of a machine, for every sheet of it; an unknown id adds one',
    params: byMachine,
    body: describeMachineBody,
    reply: workshopMachineShape,
  }),
  removeMachine: route({
    ...addresses.removeMachine,
    summary: 'Remove a machine that nothing belongs to',
    params: byMachine,
    reply: gone,
  }),
  noteMachineChange: route({
    ...addresses.noteMachineChange,
    summary: 'Note that something was changed on a machine: cards from before teach less',
    params: byMachine,
    body: noteMachineChangeBody,
    reply: workshopMachineShape,
  }),
  removeMachineChange: route({
    ...addresses.removeMachineChange,
    summary: 'Take a change of a machine back',
    params: byMachineChange,
    reply: workshopMachineShape,
  }),

  addCard: route({
    ...addresses.addCard,
    summary: 'Add a described card, or have one designed',
    params: byStudy,
    body: addCardBody,
    reply: cardReply,
  }),
  replaceCard: route({
    ...addresses.replaceCard,
    summary: 'Change a card that was described, or that nobody has read yet',
    params: byCard,
    body: replaceCardBody,
    reply: cardReply,
  }),
  noteCard: route({
    ...addresses.noteCard,
    summary: 'Say the note of a card anew, or take it away; all else of it stays',
    params: byCard,
    body: noteCardBody,
    reply: cardReply,
  }),
  removeCard: route({
    ...addresses.removeCard,
    summary: 'Remove a card with its readings',
    params: byCard,
    reply: gone,
  }),
  cardFile: route({
    ...addresses.cardFile,
    summary: `The card as a file for the machine or the printer: ${cardFileKinds.slice(0, -1).join(', ')} or json`,
    params: byCard.extend({ kind: z.enum(cardFileKinds) }),
    query: z.strictObject({ units: unitsWanted }),
  }),

  recordReadings: route({
    ...addresses.recordReadings,
    summary: 'Add reading events; an event sent twice is stored once',
    params: byStudy,
    body: recordReadingsBody,
    reply: recordReadingsReply,
  }),
  recordTally: route({
    ...addresses.recordTally,
    summary: 'Add the count of an order',
    params: byStudy,
    body: recordTallyBody,
    reply: tallied,
  }),
  removeTally: route({
    ...addresses.removeTally,
    summary: 'Take a count away',
    params: byTally,
    reply: revised,
  }),

  correctTally: route({
    ...addresses.correctTally,
    summary: 'Put a mistyped count right where it stands',
    params: z.strictObject({ tallyId: id }),
    body: correctTallyBody,
    reply: z.strictObject({
      tally: recordedTallyShape,
      revision: z.number().int().exactOptional(),
    }),
  }),

  answerStudy: route({
    ...addresses.answerStudy,
    summary: 'What the sheet says: the setting with its promise',
    params: byStudy,
    query: studyAnswerQuery,
    reply: studyAnswerReply,
  }),
  gatherHistory: route({
    ...addresses.gatherHistory,
    summary: 'What other sheets of the same material on the same machine taught: shapes and orders',
    query: historyQuery,
    reply: historyReply,
  }),
  proposeNextCard: route({
    ...addresses.proposeNextCard,
    summary: 'The card that would teach most',
    params: byStudy,
    query: nextCardQuery,
    reply: nextCardReply,
  }),
  calcFit: route({
    ...addresses.calcFit,
    summary: 'The answer to a study file; nothing is stored',
    body: studyFileBody,
    reply: fitReply,
  }),
  calcNextCard: route({
    ...addresses.calcNextCard,
    summary: 'The next card for a study file; nothing is stored',
    body: studyFileBody,
    reply: nextCardReply,
  }),

  searchBook: route({
    ...addresses.searchBook,
    summary: 'Kept settings, those for the sheet on the bed first',
    query: searchBookQuery,
    reply: z.strictObject({ entries: z.array(bookEntry), total: z.number().int() }),
  }),
  keptLike: route({
    ...addresses.keptLike,
    summary: 'Settings kept of a sheet’s material on its machine, the last kept first, 200 at most',
    query: keptLikeQuery,
    reply: z.strictObject({ entries: z.array(provenSettingShape) }),
  }),
  getEntry: route({
    ...addresses.getEntry,
    summary: 'One kept setting, by id or by the code on its shelf label',
    params: byEntry,
    reply: bookEntryRead,
  }),
  keepSetting: route({
    ...addresses.keepSetting,
    summary: 'Keep a setting with all that it holds for',
    body: keepSettingBody,
    reply: bookEntry,
  }),
  changeEntry: route({
    ...addresses.changeEntry,
    summary:
      'Say the note of a kept setting anew, or take it away; what was proven stays as it was',
    params: byEntry,
    body: changeEntryBody,
    reply: z.strictObject({ entry: provenSettingShape }),
  }),
  removeEntry: route({
    ...addresses.removeEntry,
    summary: 'Take a kept setting out of the book',
    params: byEntry,
    reply: gone,
  }),
  tallyEntry: route({
    ...addresses.tallyEntry,
    summary: 'Count an order cut with a kept setting',
    params: byEntry,
    body: tallyEntryBody,
    reply: bookEntry,
  }),

  ...machineTestApi,
  compareMeterings: route({
    ...addresses.compareMeterings,
    summary: 'Whether the curve moved since an earlier metering, and where to look',
    params: byTwoMeterings,
    query: compareQuery,
    reply: compareReply,
  }),

  rampFile: route({
    ...addresses.rampFile,
    summary: 'A focus ramp as a file for the machine or the printer: svg, dxf, gcode or pdf',
    params: byRampKind,
    query: rampFileQuery,
  }),

  judgeMaterial: route({
    ...addresses.judgeMaterial,
    summary: 'What is thought of a material, by its name',
    query: judgeMaterialQuery,
    reply: materialJudged,
  }),

  pairing: route({
    ...addresses.pairing,
    summary: 'Whether phones are let in, and the code that lets one in',
    reply: pairingReply,
  }),
  openPairing: route({
    ...addresses.openPairing,
    summary: 'Ask for a code that lets a phone in, and say what that phone may do',
    query: openPairingQuery,
    reply: pairingReply,
  }),
  changePhone: route({
    ...addresses.changePhone,
    summary: 'Call a phone that is let in by another name, or let it do more or less',
    params: byPhone,
    body: changePhoneBody,
    reply: z.strictObject({ phone: phoneLetIn }),
  }),
  removePhone: route({
    ...addresses.removePhone,
    summary: 'Let a phone in no longer',
    params: byPhone,
    reply: gone,
  }),
  pair: route({
    ...addresses.pair,
    summary: 'Pair a phone by the code that the desk shows',
    body: pairBody,
    reply: pairReply,
  }),

  openExample: route({
    ...addresses.openExample,
    summary: 'Open the invented example workshop',
    reply: homeReply,
  }),
  removeExample: route({
    ...addresses.removeExample,
    summary: 'Remove every trace of the example workshop',
    reply: homeReply,
  }),

  exportAll: route({
    ...addresses.exportAll,
    summary: 'Everything, in one file',
    reply: exportFileShape,
  }),
  exportBookTable: route({
    ...addresses.exportBookTable,
    summary: 'The book as a flat table',
  }),
  exportCellTable: route({
    ...addresses.exportCellTable,
    summary: 'Every cell of every card as it was cut and read, one line each',
  }),
  importAll: route({
    ...addresses.importAll,
    summary: 'Add what a file holds that is not here yet; all or nothing',
    body: importedFileShape,
    reply: z.strictObject({
      added: counts,
      alreadyHere: counts,
      /** Materials that came in and are refused, or asked about: nothing is advised on them. */
      notAdvised: z.array(saidInFull),
    }),
  }),
} as const;

export type { ReplyOf } from './route.ts';
export { liveEvent } from './live.ts';
