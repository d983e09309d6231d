import type { Machine } from '../machine/machine.ts';
import type { Setting } from '../machine/setting.ts';
import type { Problem } from '../problem.ts';
import type { Card } from './card.ts';
import { actsOfCard, type CardAct } from './cardActs.ts';
import { cardDrawing, type CardDrawing } from './cardDrawing.ts';
import { cardTime, type TimeEstimate } from './cardTime.ts';
import { isOfReferenceSheet } from './stripSheets.ts';
import { overdriveRemarks } from './overdriveRemarks.ts';
import { typeInList, type TypeInList } from './typeInList.ts';

/** What a person does at the machine, in this order; each has its sentence in the words layer. */
export const jobSteps = [
  'offcut-of-this-batch',
  'piece-of-reference-sheet',
  'type-in',
  'keep-the-order',
  'zero-here',
  'dry-run',
  'watch-it',
  'note-the-time',
  'let-it-cool',
] as const;
export type JobStep = (typeof jobSteps)[number];

/** What the machine shows and a pencil notes. */
export const noteFields = [
  'air',
  'waterTemperature',
  'warmUp',
  'batch',
  'timeTaken',
  'readBy',
] as const;
export type NoteField = (typeof noteFields)[number];

/** All that the page beside the machine says, whether printed, in a PDF or on a screen. */
export interface JobSheet {
  readonly card: Card;
  readonly drawing: CardDrawing;
  readonly typeIn: TypeInList;
  readonly steps: readonly JobStep[];
  readonly time: TimeEstimate;
  readonly usedMm: readonly [widthMm: number, heightMm: number];
  readonly noteFields: readonly NoteField[];
  /** Which cautions to show: the acts of the words layer's list. */
  readonly cautions: readonly CardAct[];
  /** What is to be said of the material, which stands before them. */
  readonly ofMaterial: readonly Problem[];
  /** What the card asks of the machine beyond what it is rated for. What was said when it was designed is not for who stands there. */
  readonly remarks: readonly Problem[];
  /** The rung that puts most energy into a mm: the one that burns most. */
  readonly hottest?: { readonly rung: string; readonly setting: Setting };
}

/** The first step names the sheet that the card is cut in, and only that. */
const otherSheet = (card: Card): JobStep =>
  isOfReferenceSheet(card) ? 'offcut-of-this-batch' : 'piece-of-reference-sheet';

interface Around {
  /** The card cut before it on the same machine. */
  readonly before?: Card;
  readonly ofMaterial?: readonly Problem[];
  /** With its motion, where that is known, the time is told closely. */
  readonly machine?: Machine;
  /** Whether what is cut may glow on (`glowsOn`); absent: it may. */
  readonly glows?: boolean;
}

/** The job sheet of a card. */
export const jobSheet = (
  card: Card,
  { before, ofMaterial = [], machine, glows = true }: Around = {},
): JobSheet => {
  const hottest = hottestRung(card);
  return {
    card,
    drawing: cardDrawing(card),
    typeIn: typeInList(card, before),
    steps: jobSteps.filter((step) => step !== otherSheet(card)),
    time: cardTime(card, machine?.motion),
    usedMm: [card.widthMm, card.heightMm],
    noteFields,
    cautions: [...actsOfCard(card, glows), 'newMaterial'],
    ofMaterial,
    remarks: machine === undefined ? [] : overdrivesOf(card, machine),
    ...(hottest === undefined ? {} : { hottest }),
  };
};

/** Overdrive is said on every sheet that lies beside the machine, whoever had it made. */
const overdrivesOf = (card: Card, machine: Machine): readonly Problem[] =>
  overdriveRemarks(
    card.rungs.map(({ setting }) => setting),
    machine,
  );

const energy = ({ powerPct, speedMmPerS, passes }: Setting): number =>
  (powerPct * passes) / speedMmPerS;

const hottestRung = (card: Card): JobSheet['hottest'] =>
  card.rungs.reduce<JobSheet['hottest']>(
    (best, { letter, setting }) =>
      best === undefined || energy(setting) > energy(best.setting)
        ? { rung: letter, setting }
        : best,
    undefined,
  );
