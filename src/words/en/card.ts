import type { CardCode } from '../../core/card/codes.ts';
import type { Sentence } from '../sentence.ts';

/** The figures of a request as they are said, by their names in it. */
const figures: Readonly<Record<string, (value: string) => string>> = {
  powerPct: (value) => `a power setting of ${value}\u00a0%`,
  sizeMm: (value) => `test shapes of ${value}\u00a0mm`,
  sheetWidthMm: (value) => `a piece ${value}\u00a0mm wide`,
  sheetHeightMm: (value) => `a piece ${value}\u00a0mm high`,
  thicknessMm: (value) => `a sheet ${value}\u00a0mm thick`,
  cellsEach: (value) => `${value} cells at each setting`,
  settingsAtMost: (value) => `at most ${value} settings`,
  entriesAtMost: (value) => `at most ${value} separate settings on the controller`,
  speedMmPerS: (value) => `a speed of ${value}\u00a0mm/s`,
  'rungs: powerPct': (value) => `a setting of ${value}\u00a0% power`,
  'rungs: minPowerPct': (value) => `a setting of ${value}\u00a0% power in corners`,
  'rungs: speedMmPerS': (value) => `a setting of ${value}\u00a0mm/s`,
  'rungs: passes': (value) => `a setting of ${value} passes`,
  rungs: (value) => `${value} settings`,
  cells: (value) => `${value} cells`,
};

const figureOf = (what: string, value: string): string =>
  figures[what]?.(value) ?? `${what} = ${value}`;

export const cardWords = {
  'card-request-out-of-range': {
    message: (p) => `The card asks for ${figureOf(p('what'), p('value'))}.`,
    remedy: (p) =>
      `Choose from ${p('least')} to ${p('most')}; in a request by file the figure is called "${p('what')}".`,
  },
  'card-corners-need-corners': {
    message: () => 'A circle has no corners, so it cannot tell what less power in corners does.',
    remedy: () => 'Choose a star, a key, a comb or a hook.',
  },
  'card-corners-below-start': {
    message: (p) =>
      `At ${p('speedMmPerS')} mm/s the machine runs wholly on the power in corners: its start speed is ${p('startMmPerS')} mm/s.`,
    remedy: () =>
      'Type the same figure for both powers at such speeds, or ask for more power so that the card may run faster.',
  },
  'card-too-many-entries': {
    message: (p) =>
      `The card has ${p('rungs')} settings, and your control program keeps only ${p('most')} apart beside marks and outline.`,
    remedy: () => 'Take fewer rungs, or repeat the colour trial.',
  },
  'card-nothing-to-vary': {
    message: () => 'No setting is left to put on the card.',
    remedy: () => 'Widen the machine’s range of speed or power, or name the settings outright.',
  },
  'card-cell-below-bed-gap': {
    message: (p) =>
      `A shape of ${p('sizeMm')} mm can drop through or tip in the ${p('gapMm')} mm gaps of the bed.`,
    remedy: (p) => `Make the shapes ${p('neededMm')} mm or bigger.`,
  },
  'card-bigger-than-sheet': {
    message: (p) =>
      `${p('cells')} cells of ${p('sizeMm')} mm do not fit on ${p('sheetWidthMm')} × ${p('sheetHeightMm')} mm with room for their words.`,
    remedy: () => 'Take fewer cells, a smaller shape, or a bigger offcut.',
  },
  'card-power-above-machine': {
    message: (p) =>
      `The card asks for a ${p('powerPct')} % setting; the machine is kept to ${p('most')} %.`,
    remedy: (p) => `Choose ${p('most')} % or less, or correct the machine’s limit.`,
  },
  'card-rung-sped-up-to-ceiling': {
    message: (p) =>
      `${p('saidMmPerS')} mm/s at ${p('powerPct')} % is ${p('times')} times the line energy at which it is believed to come through: it would burn rather than teach. The card cuts ${p('speedMmPerS')} mm/s instead.`,
    remedy: () =>
      'If you know that it needs that much, say what you cut it with now, or add a card that was cut: the limit follows what is known.',
  },
  'card-rung-rounded': {
    message: (p) =>
      `${p('saidMmPerS')} mm/s at ${p('saidPct')} % is on the card as ${p('speedMmPerS')} mm/s at ${p('powerPct')} %.`,
    remedy: () => 'Cards hold one decimal, which is what people type.',
  },
  'card-rung-beyond-machine': {
    message: (p) =>
      `${p('speedMmPerS')} mm/s lies outside the machine’s ${p('least')} to ${p('most')} mm/s.`,
    remedy: () => 'Change the rung, or correct the machine’s range of speed.',
  },
  'card-rung-overdrives': {
    message: (p) =>
      `A ${p('powerPct')} % setting drives the tube above its rated current, which it reaches at ${p('ratedPct')} %.`,
    remedy: (p) => `Overdrive shortens the tube’s life. Stay at ${p('ratedPct')} % or below.`,
  },
  'card-circle-flatters': {
    message: () =>
      'A circle flatters the machine: the head never slows, so it comes out sooner than work with corners does.',
    remedy: () => 'Take a shape with corners, unless all that you cut is round.',
  },
  'card-scoring-guessed': {
    message: () => 'Words and marks use a guessed scoring setting.',
    remedy: () => 'Try it on scrap first, or tell what you score a line with.',
  },
  'card-no-trusted-setting': {
    message: () =>
      'The card has no outline and no window, since no setting is trusted yet to cut them.',
    remedy: () => 'Read it in the corner of the sheet, or name a slow setting that you trust.',
  },
  'card-fewer-rungs-than-asked': {
    message: (p) => `The card has ${p('rungs')} settings, not ${p('asked')}.`,
    remedy: () =>
      'More do not fit between the machine’s limits and three times the believed line energy.',
  },
  'card-order-only-in-gcode': {
    message: () => 'This card mixes its rungs in cutting: only the G-code file keeps that order.',
    remedy: () => 'For a machine that takes drawings, design it rung by rung.',
  },
} satisfies Record<CardCode, Sentence>;
