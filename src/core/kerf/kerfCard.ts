import type { CardDrawing, DrawnLayer } from '../card/cardDrawing.ts';
import type { DrawnPart } from '../card/cardParts.ts';
import type { BelievedChangeover } from '../card/cardRequest.ts';
import { energyCeiling } from '../card/ceiling.ts';
import { firingProblem } from '../card/firingLimits.ts';
import { marksColour, rungColours, trustedColour } from '../card/rungColours.ts';
import { scoringGuess } from '../card/scoring.ts';
import { layerName } from '../card/settingWords.ts';
import type { Machine } from '../machine/machine.ts';
import type { Setting } from '../machine/setting.ts';
import type { Polyline } from '../path/polyline.ts';
import { done, problemOf, type Outcome, type Problem } from '../problem.ts';
import { combSheet, type CombSheet, type CombWish } from './combSheet.ts';
import { combLines } from './combLines.ts';
import { slotLines } from './slotLines.ts';
import { slotSheet, type SlotSheet, type SlotWish } from './slotSheet.ts';

/** What is cut to find a kerf, and what to find the slots of joints. */
export const kerfCardKinds = ['comb', 'slots'] as const;
export type KerfCardKind = (typeof kerfCardKinds)[number];

export type KerfCardWish =
  ({ readonly kind: 'comb' } & CombWish) | ({ readonly kind: 'slots' } & SlotWish);

export type KerfCardSheet =
  ({ readonly kind: 'comb' } & CombSheet) | ({ readonly kind: 'slots' } & SlotSheet);

export interface KerfCardRequest {
  readonly wish: KerfCardWish;
  /** The setting whose kerf is wanted: all is cut with it. */
  readonly setting: Setting;
  /** What a line is scored with; absent: a guess. */
  readonly scoring?: Setting;
  /** Of the sheet that it is cut from, as measured. */
  readonly thicknessMm: number;
  readonly machine: Machine;
  /** Where the sheet is believed to be cut through. */
  readonly believed: BelievedChangeover;
}

/** A comb card or a slot card: where everything lies, and what it is cut and scored with. */
export interface KerfCard {
  readonly sheet: KerfCardSheet;
  readonly setting: Setting;
  readonly scoring: Setting;
  readonly thicknessMm: number;
  readonly remarks: readonly Problem[];
  /** What is to be said of what the sheet is of; absent: nothing. */
  readonly ofMaterial?: readonly Problem[];
}

/**
 * A comb card or a slot card. Refuses what `combSheet` and `slotSheet` refuse, and a setting beyond a limit: of the machine,
 * the tube, or what the sheet bears; marks that may come through.
 */
export const kerfCard = ({
  wish,
  setting,
  scoring: said,
  thicknessMm,
  machine,
  believed,
}: KerfCardRequest): Outcome<KerfCard> => {
  const sheet = sheetOf(wish, { thicknessMm, gapMm: machine.bed?.gapMm ?? 0 });
  if (!sheet.ok) return sheet;
  const { powerPct, air } = setting;
  const scoring =
    said ?? scoringGuess({ believed, powerPct, machine, ...(air === undefined ? {} : { air }) });
  // Who says a setting may know the machine better than what is expected of it does.
  const ceilingTimes = energyCeiling * Math.exp(believed(powerPct).lnSd);
  const beyond =
    firingProblem('setting', setting, { machine, believed, ceilingTimes }) ??
    firingProblem('marks', scoring, { machine, believed });
  if (beyond !== undefined) return { ok: false, problem: beyond };
  return done({
    sheet: sheet.value,
    setting,
    scoring,
    thicknessMm,
    remarks: said === undefined ? [problemOf('card-scoring-guessed')] : [],
  });
};

const sheetOf = (
  wish: KerfCardWish,
  given: { readonly thicknessMm: number; readonly gapMm: number },
): Outcome<KerfCardSheet> => {
  if (wish.kind === 'comb') {
    const laid = combSheet(wish, given);
    return laid.ok ? done({ kind: 'comb', ...laid.value }) : laid;
  }
  const laid = slotSheet(wish, given.thicknessMm);
  return laid.ok ? done({ kind: 'slots', ...laid.value }) : laid;
};

/**
 * Its lines in mm from the piece's lower left corner, in the order of cutting: words, then what lies inside, outlines last. Two
 * layers of one setting, so that a control program keeps that order.
 */
export const kerfCardDrawing = ({ sheet, setting, scoring }: KerfCard): CardDrawing => {
  const lines = sheet.kind === 'comb' ? combLines(sheet) : slotLines(sheet);
  const [inside = marksColour] = rungColours(1);
  return {
    widthMm: sheet.widthMm,
    heightMm: sheet.heightMm,
    layers: [
      layer('marks', layerName('marks', scoring), marksColour, scoring, lines.marks),
      layer('rung', layerName('inside', setting), inside, setting, lines.inside),
      layer('outline', layerName('outline', setting), trustedColour, setting, lines.outlines),
    ],
  };
};

const layer = (
  kind: DrawnLayer['kind'],
  name: string,
  colour: string,
  setting: Setting,
  polylines: readonly Polyline[],
): DrawnLayer => {
  const of: DrawnPart['of'] = { what: kind === 'marks' ? 'hint' : 'whole' };
  return { kind, name, colour, setting, parts: [{ of, polylines }], polylines };
};
