import { z } from 'zod';
import { exportFileShape, importedFileShape } from '../formats/exportFile.ts';
import { bedTestShape } from '../formats/saved/bedTest.ts';
import { id } from '../formats/saved/bounds.ts';
import { focusTestShape } from '../formats/saved/focusTest.ts';
import { meteringShape } from '../formats/saved/metering.ts';
import { workshopMachineShape } from '../formats/saved/workshopMachine.ts';
import { recordedTallyShape } from '../formats/saved/tally.ts';
import {
  fitReply,
  nextCardQuery,
  nextCardReply,
  studyAnswerQuery,
  studyAnswerReply,
  studyFileBody,
} from './answer.ts';
import { bedTestReply, byBedTest, recordBedTestBody } from './bed.ts';
import { bookEntry, byEntry, keepSettingBody, searchBookQuery, tallyEntryBody } from './book.ts';
import { addCardBody, byCard, cardReply, replaceCardBody } from './card.ts';
import { historyQuery, historyReply } from './history.ts';
import {
  byFocusTest,
  byRampKind,
  focusTestReply,
  rampFileQuery,
  recordFocusTestBody,
} from './focus.ts';
import { healthReply, homeReply } from './home.ts';
import {
  byMachine,
  byMachineChange,
  describeMachineBody,
  noteMachineChangeBody,
} from './machine.ts';
import { judgeMaterialQuery, materialJudged } from './material.ts';
import {
  byMetering,
  byTwoMeterings,
  compareQuery,
  compareReply,
  meteringReply,
  recordMeteringBody,
} from './metering.ts';
import { pairBody, pairingReply, pairReply } from './pairing.ts';
import { route } from './route.ts';
import {
  byStudy,
  changeStudyBody,
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
  meterings: z.number().int(),
  focusTests: z.number().int(),
  bedTests: z.number().int(),
});

/** Every route of the server, by the verb that it carries out. */
export const api = {
  health: route({
    method: 'GET',
    path: '/api/health',
    summary: 'Whether the server is up',
    reply: healthReply,
  }),
  home: route({
    method: 'GET',
    path: '/api/home',
    summary: 'What the first screen needs',
    reply: homeReply,
  }),

  live: route({
    method: 'GET',
    path: '/api/live',
    summary: 'A stream of server-sent events: one whenever something stored has changed',
  }),

  listStudies: route({
    method: 'GET',
    path: '/api/studies',
    summary: 'All studies, the last touched first',
    reply: z.strictObject({ studies: z.array(studySummary) }),
  }),
  startStudy: route({
    method: 'POST',
    path: '/api/studies',
    summary: 'Begin a study; sending the same id again changes nothing',
    body: startStudyBody,
    reply: storedStudy,
  }),
  getStudy: route({
    method: 'GET',
    path: '/api/studies/:id',
    summary: 'One study, whole',
    params: byStudy,
    reply: storedStudy,
  }),
  changeStudy: route({
    method: 'PATCH',
    path: '/api/studies/:id',
    summary: 'Replace its stock, promise, aim, ask or habit; name or describe its machine',
    params: byStudy,
    body: changeStudyBody,
    reply: storedStudy,
  }),
  removeStudy: route({
    method: 'DELETE',
    path: '/api/studies/:id',
    summary: 'Remove a study with its cards and readings; what was kept in the book stays',
    params: byStudy,
    reply: gone,
  }),

  listMachines: route({
    method: 'GET',
    path: '/api/machines',
    summary: 'The machines of the workshop, as they were added',
    reply: z.strictObject({ machines: z.array(workshopMachineShape) }),
  }),
  describeMachine: route({
    method: 'PUT',
    path: '/api/machines/:id',
    summary: 'Say what is known of a machine, for every sheet of it; an unknown id adds one',
    params: byMachine,
    body: describeMachineBody,
    reply: workshopMachineShape,
  }),
  removeMachine: route({
    method: 'DELETE',
    path: '/api/machines/:id',
    summary: 'Remove a machine that nothing belongs to',
    params: byMachine,
    reply: gone,
  }),
  noteMachineChange: route({
    method: 'POST',
    path: '/api/machines/:id/changes',
    summary: 'Note that something was changed on a machine: cards from before teach less',
    params: byMachine,
    body: noteMachineChangeBody,
    reply: workshopMachineShape,
  }),
  removeMachineChange: route({
    method: 'DELETE',
    path: '/api/machines/:id/changes/:changeId',
    summary: 'Take a change of a machine back',
    params: byMachineChange,
    reply: workshopMachineShape,
  }),

  addCard: route({
    method: 'POST',
    path: '/api/studies/:id/cards',
    summary: 'Add a described card, or have one designed',
    params: byStudy,
    body: addCardBody,
    reply: cardReply,
  }),
  replaceCard: route({
    method: 'PUT',
    path: '/api/studies/:id/cards/:code',
    summary: 'Change a card that was described, or that nobody has read yet',
    params: byCard,
    body: replaceCardBody,
    reply: cardReply,
  }),
  removeCard: route({
    method: 'DELETE',
    path: '/api/studies/:id/cards/:code',
    summary: 'Remove a card with its readings',
    params: byCard,
    reply: gone,
  }),
  cardFile: route({
    method: 'GET',
    path: '/api/studies/:id/cards/:code/card.:kind',
    summary: 'The card as a file for the machine or the printer: svg, dxf, gcode, pdf or json',
    params: byCard.extend({ kind: z.enum(['svg', 'dxf', 'gcode', 'pdf', 'json']) }),
  }),

  recordReadings: route({
    method: 'POST',
    path: '/api/studies/:id/events',
    summary: 'Add reading events; an event sent twice is stored once',
    params: byStudy,
    body: recordReadingsBody,
    reply: recordReadingsReply,
  }),
  recordTally: route({
    method: 'POST',
    path: '/api/studies/:id/tallies',
    summary: 'Add the count of an order',
    params: byStudy,
    body: recordTallyBody,
    reply: tallied,
  }),
  removeTally: route({
    method: 'DELETE',
    path: '/api/studies/:id/tallies/:tallyId',
    summary: 'Take a tally away',
    params: byTally,
    reply: revised,
  }),

  answerStudy: route({
    method: 'GET',
    path: '/api/studies/:id/answer',
    summary: 'What the study says: the setting with its promise',
    params: byStudy,
    query: studyAnswerQuery,
    reply: studyAnswerReply,
  }),
  gatherHistory: route({
    method: 'GET',
    path: '/api/history',
    summary: 'What other sheets of the same material on the same machine taught: cells and orders',
    query: historyQuery,
    reply: historyReply,
  }),
  proposeNextCard: route({
    method: 'GET',
    path: '/api/studies/:id/nextcard',
    summary: 'The card that would teach most',
    params: byStudy,
    query: nextCardQuery,
    reply: nextCardReply,
  }),
  calcFit: route({
    method: 'POST',
    path: '/api/calc/fit',
    summary: 'The answer to a study file; nothing is stored',
    body: studyFileBody,
    reply: fitReply,
  }),
  calcNextCard: route({
    method: 'POST',
    path: '/api/calc/nextcard',
    summary: 'The next card for a study file; nothing is stored',
    body: studyFileBody,
    reply: nextCardReply,
  }),

  searchBook: route({
    method: 'GET',
    path: '/api/book',
    summary: 'Proven settings, those for the sheet on the bed first',
    query: searchBookQuery,
    reply: z.strictObject({ entries: z.array(bookEntry) }),
  }),
  getEntry: route({
    method: 'GET',
    path: '/api/book/:id',
    summary: 'One proven setting, by id or by the code on its shelf label',
    params: byEntry,
    reply: bookEntry,
  }),
  keepSetting: route({
    method: 'POST',
    path: '/api/book',
    summary: 'Keep a setting with all that it holds for',
    body: keepSettingBody,
    reply: bookEntry,
  }),
  removeEntry: route({
    method: 'DELETE',
    path: '/api/book/:id',
    summary: 'Take a proven setting out of the book',
    params: byEntry,
    reply: gone,
  }),
  tallyEntry: route({
    method: 'POST',
    path: '/api/book/:id/tallies',
    summary: 'Count an order cut with a proven setting',
    params: byEntry,
    body: tallyEntryBody,
    reply: bookEntry,
  }),

  listMeterings: route({
    method: 'GET',
    path: '/api/meterings',
    summary: 'What the milliammeter said, the latest metering first',
    reply: z.strictObject({ meterings: z.array(meteringShape) }),
  }),
  recordMetering: route({
    method: 'POST',
    path: '/api/meterings',
    summary: 'Keep a metering with its date; the same one sent again changes nothing',
    body: recordMeteringBody,
    reply: meteringReply,
  }),
  getMetering: route({
    method: 'GET',
    path: '/api/meterings/:id',
    summary: 'One metering: its curve with bands, where it fires, where rated current is reached',
    params: byMetering,
    reply: meteringReply,
  }),
  removeMetering: route({
    method: 'DELETE',
    path: '/api/meterings/:id',
    summary: 'Remove a metering',
    params: byMetering,
    reply: gone,
  }),
  compareMeterings: route({
    method: 'GET',
    path: '/api/meterings/:id/against/:before',
    summary: 'Whether the curve moved since an earlier metering, and where to look',
    params: byTwoMeterings,
    query: compareQuery,
    reply: compareReply,
  }),

  rampFile: route({
    method: 'GET',
    path: '/api/focus-ramp/ramp.:kind',
    summary: 'A focus ramp as a file for the machine or the printer: svg, dxf, gcode or pdf',
    params: byRampKind,
    query: rampFileQuery,
  }),
  listFocusTests: route({
    method: 'GET',
    path: '/api/focus-tests',
    summary: 'Where the focus was found, the latest test first',
    reply: z.strictObject({ tests: z.array(focusTestShape) }),
  }),
  recordFocusTest: route({
    method: 'POST',
    path: '/api/focus-tests',
    summary: 'Keep a focus test with its date; the same one sent again changes nothing',
    body: recordFocusTestBody,
    reply: focusTestReply,
  }),
  getFocusTest: route({
    method: 'GET',
    path: '/api/focus-tests/:id',
    summary: 'One focus test: the gap, the depth of focus, and what the gauge is off by',
    params: byFocusTest,
    reply: focusTestReply,
  }),
  removeFocusTest: route({
    method: 'DELETE',
    path: '/api/focus-tests/:id',
    summary: 'Remove a focus test',
    params: byFocusTest,
    reply: gone,
  }),

  listBedTests: route({
    method: 'GET',
    path: '/api/bed-tests',
    summary: 'Readings of the four corners of the bed, the latest first',
    reply: z.strictObject({ tests: z.array(bedTestShape) }),
  }),
  recordBedTest: route({
    method: 'POST',
    path: '/api/bed-tests',
    summary:
      'Keep a reading of the four corners with its date; the same one sent again changes nothing',
    body: recordBedTestBody,
    reply: bedTestReply,
  }),
  getBedTest: route({
    method: 'GET',
    path: '/api/bed-tests/:id',
    summary: 'One reading of the four corners: where the bed is weak, how surely, what to look at',
    params: byBedTest,
    reply: bedTestReply,
  }),
  removeBedTest: route({
    method: 'DELETE',
    path: '/api/bed-tests/:id',
    summary: 'Remove a reading of the four corners',
    params: byBedTest,
    reply: gone,
  }),

  judgeMaterial: route({
    method: 'GET',
    path: '/api/materials',
    summary: 'What is thought of a material, by its name',
    query: judgeMaterialQuery,
    reply: materialJudged,
  }),

  pairing: route({
    method: 'GET',
    path: '/api/pairing',
    summary: 'Whether phones are let in, and the code that lets one in',
    reply: pairingReply,
  }),
  pair: route({
    method: 'POST',
    path: '/api/pair',
    summary: 'Pair a phone by the code that the desk shows',
    body: pairBody,
    reply: pairReply,
  }),

  openExample: route({
    method: 'POST',
    path: '/api/example',
    summary: 'Open the invented example workshop',
    reply: homeReply,
  }),
  removeExample: route({
    method: 'DELETE',
    path: '/api/example',
    summary: 'Remove every trace of the example workshop',
    reply: homeReply,
  }),

  exportAll: route({
    method: 'GET',
    path: '/api/export',
    summary: 'Everything, in one file',
    reply: exportFileShape,
  }),
  exportBookTable: route({
    method: 'GET',
    path: '/api/export/book.csv',
    summary: 'The book as a flat table',
  }),
  importAll: route({
    method: 'POST',
    path: '/api/import',
    summary: 'Add what a file holds that is not here yet; all or nothing',
    body: importedFileShape,
    reply: z.strictObject({ added: counts, alreadyHere: counts }),
  }),
} as const;

export type { BodyOf, ParamsOf, QueryOf, ReplyOf } from './route.ts';
export { addressOf } from './route.ts';
export { errorReply } from './problem.ts';
export { liveEvent } from './live.ts';
