import type { TimeEstimate } from '../../core/card/cardTime.ts';
import type { JobStep, NoteField } from '../../core/card/jobSheet.ts';
import type { TypedFigure } from '../../core/card/typeInList.ts';
import type { Air } from '../../core/machine/air.ts';
import { cornerPowerPct, type Setting } from '../../core/machine/setting.ts';
import {
  counted,
  durationWords,
  lengthWords,
  listed,
  pressureWords,
  speedWords,
} from './terms/figures.ts';

const gap = '\u202f';

const airWords = (air: Air | undefined): string => {
  if (air === undefined) return 'as it stands';
  if (air === 'off') return 'off';
  return air === 'pump' ? 'on' : pressureWords(air.kPa);
};

const figureWords: Readonly<Record<TypedFigure, (setting: Setting) => string>> = {
  speedMmPerS: (setting) => speedWords(setting.speedMmPerS),
  powerPct: (setting) => `${String(setting.powerPct)}${gap}%`,
  minPowerPct: (setting) => `${String(cornerPowerPct(setting))}${gap}%`,
  passes: (setting) => String(setting.passes),
  air: (setting) => airWords(setting.air),
};

const figureNames: Readonly<Record<TypedFigure, string>> = {
  speedMmPerS: 'speed',
  powerPct: 'power',
  minPowerPct: 'corner power',
  passes: 'passes',
  air: 'air',
};

const steps: Readonly<Record<JobStep, string>> = {
  'offcut-of-this-batch':
    'Lay an offcut of this very batch flat on the bed, held down, clips clear of the path.',
  'piece-of-reference-sheet':
    'Lay a piece of the reference sheet on the bed, not of the new batch: flat, held down, clips clear of the path.',
  'type-in': 'Type in the list: one letter, one colour, one entry. Tick each.',
  'keep-the-order':
    'Keep the order of the list: marks first, outline last. Turn off re-ordering and path optimising.',
  'zero-here': 'Set zero at the marked corner, lower left.',
  'dry-run':
    'Dry run round the outline with the beam off. Nothing may touch, nothing may stick out of the sheet.',
  'watch-it': 'Lid shut, extraction on, warm up as always; then run, and stay with it to the end.',
  'note-the-time':
    'Write down what the machine says it took: a wrong time betrays a mistyped setting.',
  'let-it-cool':
    'Let the fume clear and the card cool. Lift it level, one knuckle tap, one light push, look at the back.',
};

const notes: Readonly<Record<NoteField, string>> = {
  air: 'Air at the gauge',
  waterTemperature: 'Water temperature',
  warmUp: 'Warmed up for',
  batch: 'Batch and sheet',
  timeTaken: 'It took',
  readBy: 'Read by, on',
};

/** The page that lies beside the machine, printed or on a screen. */
export const jobSheetText = {
  title: (code: string) => `Card ${code}`,
  cautions: 'Before the beam is on',
  cautionsMore: 'And keep in mind',
  stepsTitle: 'At the machine',
  typeInTitle: 'Type in',
  notesTitle: 'Note here',
  pictureNote:
    'Drawn at its true size where it fits the page. Letters count, colours only tell entries apart.',
  zeroHere: 'zero here',
  step: (step: JobStep) => steps[step],
  note: (field: NoteField) => notes[field],
  figure: (figure: TypedFigure, setting: Setting) => figureWords[figure](setting),
  figureName: (figure: TypedFigure) => figureNames[figure],
  same: (figures: readonly TypedFigure[], setting: Setting) =>
    listed(figures.map((figure) => `${figureNames[figure]} ${figureWords[figure](setting)}`)),
  everywhere: (same: string) => `The same in every setting: ${same}. Type it once and copy it.`,
  inGroup: (same: string) => `With ${same}:`,
  unchanged: 'as on the card before',
  toType: (count: number, unchanged: number) =>
    unchanged === 0
      ? `${counted(count, 'setting')} to type for the shapes.`
      : `${counted(count, 'setting')} to type for the shapes; ${String(unchanged)} as before.`,
  label: (label: string) =>
    ({ marks: 'words and marks', window: 'window, outline', outline: 'outline' })[label] ?? label,
  settingUnsaid: 'your own setting for scoring a line',
  size: (widthMm: number, heightMm: number) =>
    `${lengthWords(widthMm)} × ${lengthWords(heightMm)} of sheet`,
  time: ({ seconds, lowSeconds, highSeconds, motion }: TimeEstimate) =>
    `It should take about ${durationWords(seconds)} (between ${durationWords(lowSeconds)} and ${durationWords(highSeconds)}${motion === 'assumed' ? ', as machines differ' : ''}).`,
  trial: (strips: number) =>
    `Load it in your control program; there is nothing to cut. It has ${String(strips)} strips: how many separate entries do you see? That is entriesAtMost.`,
  hottest: (rung: string) => `Setting ${rung} burns most. Watch it.`,
  thickness: (thicknessMm: number) => `${lengthWords(Number(thicknessMm.toFixed(2)))} thick`,
  batch: (batch: string) => `batch ${batch}`,
  sheet: (sheet: string) => (sheet.endsWith('sheet') ? sheet : `sheet ${sheet}`),
};
