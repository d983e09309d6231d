import type { CardCode } from '../../core/problems/card.ts';
import type { FiringCode, FiringPart } from '../../core/problems/firing.ts';
import type { Sentences } from '../shape/sentence.ts';

/** The figures of a request as they are said, by their names in it. */
const figures: Readonly<Record<string, (value: string) => string>> = {
  powerPct: (value) => `a power setting of ${value}\u00a0%`,
  sizeMm: (value) => `test shapes of ${value}\u00a0mm`,
  sheetWidthMm: (value) => `a piece ${value}\u00a0mm wide`,
  sheetHeightMm: (value) => `a piece ${value}\u00a0mm high`,
  thicknessMm: (value) => `a sheet ${value}\u00a0mm thick`,
  cellsEach: (value) => `${value} shapes at each setting`,
  settingsAtMost: (value) => `at most ${value} settings`,
  entriesAtMost: (value) => `at most ${value} separate settings on the controller`,
  speedMmPerS: (value) => `a speed of ${value}\u00a0mm/s`,
  'rungs: powerPct': (value) => `a setting of ${value}\u00a0% power`,
  'rungs: minPowerPct': (value) => `a setting of ${value}\u00a0% corner power`,
  'rungs: speedMmPerS': (value) => `a setting of ${value}\u00a0mm/s`,
  'rungs: passes': (value) => `a setting of ${value} passes`,
  rungs: (value) => `${value} settings`,
  cells: (value) => `${value} shapes`,
};

const figureOf = (what: string, value: string): string =>
  figures[what]?.(value) ?? `${what} = ${value}`;

/** Parts of a job that fire, at the beginning of a sentence. */
const parts: Readonly<Record<FiringPart, string>> = {
  cell: 'A shape',
  marks: 'The scoring line (words and marks)',
  trusted: 'The slow setting that you trust (window and outline)',
  line: 'The line',
  setting: 'The cut',
};

interface Weakness {
  readonly helps: 'power' | 'passes' | 'nothing';
  readonly atPct: string;
  readonly times: string;
}

const inPasses = (passes: string): string => (passes === '1' ? 'one pass' : `${passes} passes`);

/** What would help a machine that is too weak, a sentence. */
const helpFor = ({ helps, atPct, times }: Weakness): string =>
  helps === 'power'
    ? `From about ${atPct} % it is as likely as not to come through.`
    : helps === 'passes'
      ? `In about ${inPasses(times)} at ${atPct} % it is as likely as not to come through: try that on scrap, stay with it, and watch for flames.`
      : `Not even ${inPasses(times)} at ${atPct} % are likely to go through: take thinner stock, or cut it on a stronger machine.`;

export const cardWords = {
  'card-request-out-of-range': {
    message: (p) => `The card asks for ${figureOf(p.what, p.value)}.`,
    remedy: (p) =>
      `Choose from ${p.least} to ${p.most}; in a request by file the figure is called "${p.what}".`,
  },
  'card-corners-need-corners': {
    message: () => 'A circle has no corners, so it cannot tell what less corner power does.',
    remedy: () => 'Choose a star, a key, a comb or a hook.',
  },
  'card-corners-below-start': {
    message: (p) =>
      `At ${p.speedMmPerS} mm/s the machine runs wholly on the corner power: its power ramp starts at ${p.startMmPerS} mm/s.`,
    remedy: () =>
      'Type the same figure for both powers at such speeds, or ask for more power so that the card may run faster.',
  },
  'card-too-many-entries': {
    message: (p) =>
      `The card has ${p.rungs} settings, and your control program keeps only ${p.most} apart beside marks and outline.`,
    remedy: () => 'Take fewer settings, or repeat the colour trial.',
  },
  'card-nothing-to-vary': {
    message: () => 'No setting is left to put on the card.',
    remedy: () => 'Widen the machine’s range of speed or power, or name the settings outright.',
  },
  'card-tube-readings-odd': {
    message: (p) =>
      p.odd === 'falls'
        ? `The meter is said to have read ${p.currentMa} mA at ${p.powerPct} %, much less than at a lower setting. What reaches the rated ${p.ratedMa} mA cannot be told from that.`
        : `The meter is said to have read ${p.currentMa} mA at ${p.powerPct} %, next to nothing beside the rated ${p.ratedMa} mA: one of the two may be in another unit.`,
    remedy: () => 'Correct the readings of the machine, in milliamperes, or remove them.',
  },
  'card-cell-below-bed-gap': {
    message: (p) =>
      `A shape of ${p.sizeMm} mm can drop through or tip in the ${p.gapMm} mm gaps of the bed.`,
    remedy: (p) => `Make the shapes ${p.neededMm} mm or bigger.`,
  },
  'card-bigger-than-sheet': {
    message: (p) =>
      `${p.cells} shapes of ${p.sizeMm} mm do not fit on ${p.sheetWidthMm} × ${p.sheetHeightMm} mm with room for their words.`,
    remedy: () => 'Take fewer shapes, a smaller shape, or a bigger offcut.',
  },
  'card-power-above-machine': {
    message: (p) =>
      `The card asks for a ${p.powerPct} % setting; the machine is kept to ${p.most} %.`,
    remedy: (p) => `Choose ${p.most} % or less, or correct the machine’s limit.`,
  },
  'card-rung-sped-up-to-ceiling': {
    message: (p) =>
      `${p.saidMmPerS} mm/s at ${p.powerPct} % is ${p.times} times the line energy at which it is believed to come through: it would burn rather than teach. The card cuts ${p.speedMmPerS} mm/s instead.`,
    remedy: () =>
      'If you know that it needs that much, say what you cut it with now, or add a card that was cut: the limit follows what is known.',
  },
  'card-rung-rounded': {
    message: (p) =>
      `${p.saidMmPerS} mm/s at ${p.saidPct} % is on the card as ${p.speedMmPerS} mm/s at ${p.powerPct} %.`,
    remedy: () => 'Cards hold one decimal, which is what people type.',
  },
  'card-machine-too-strong': {
    message: (p) =>
      `This machine is too strong or too slow for the sheet: even at ${p.powerPct} % and its top speed of ${p.mostMmPerS} mm/s it gives about ${p.times} times the line energy that goes through. Every shape and every word would come out, and may catch fire.`,
    remedy: () =>
      'If it goes faster than that, correct its range of speed. Say how strong the tube is, or one setting that you cut this with now. Otherwise do not cut a card of this sheet on this machine.',
  },
  'card-machine-strong-for-it': {
    message: (p) =>
      `This machine is strong for the sheet: at ${p.powerPct} % and its top speed of ${p.mostMmPerS} mm/s everything may come out.`,
    remedy: () =>
      'If it goes faster than that, correct its range of speed. Watch the card closely: thin sheet flares up.',
  },
  'card-machine-too-weak': {
    message: (p) =>
      `This machine is probably too weak for the sheet: even at ${p.powerPct} % and ${p.speedMmPerS} mm/s in ${inPasses(p.passes)} no shape is likely to fall out, so there is no card to cut.`,
    remedy: (p) =>
      `${helpFor(p)} If it has cut this sheet already, say with what setting; if it goes slower than that, correct its range of speed.`,
  },
  'card-machine-weak-for-it': {
    message: (p) =>
      `This machine may be too weak for the sheet: even at ${p.powerPct} % and ${p.speedMmPerS} mm/s in ${inPasses(p.passes)} perhaps no shape falls out.`,
    remedy: (p) => helpFor(p),
  },
  'card-power-lowered': {
    message: (p) =>
      `At ${p.askedPct} % this sheet comes through even at the machine’s top speed of ${p.mostMmPerS} mm/s: the card uses ${p.powerPct} % instead.`,
    remedy: () =>
      'If the machine goes faster than that, correct its range of speed; say how strong the tube is where that is not known.',
  },
  'card-rung-overdrives': {
    message: (p) =>
      `A ${p.powerPct} % setting drives the tube above its rated current, which it reaches at ${p.ratedPct} %.`,
    remedy: (p) => `Overdrive shortens the tube’s life. Stay at ${p.ratedPct} % or below.`,
  },
  'card-circle-flatters': {
    message: () =>
      'A circle flatters the machine: the head never slows, so it comes out sooner than work with corners does.',
    remedy: () => 'Take a shape with corners, unless all that you cut is round.',
  },
  'card-strength-unsaid': {
    message: () =>
      'Nobody has said how strong the machine is, so the card reaches from what a 40 W tube cuts to what a 130 W tube does.',
    remedy: () =>
      'Say about how strong the tube is (the watts that it was sold as), or one slow setting that has cut this sheet: the card then looks closer.',
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
    message: (p) => `The card has ${p.rungs} settings, not ${p.asked}.`,
    remedy: () =>
      'More do not fit between the machine’s limits and three times the believed line energy.',
  },
  'card-order-only-in-gcode': {
    message: () =>
      'This card mixes its settings in cutting: only the G-code file keeps that order.',
    remedy: () => 'For a machine that takes drawings, design it setting by setting.',
  },
  'fires-above-machine': {
    message: (p) =>
      `${parts[p.part]} is set to ${p.powerPct} %; the machine is kept to ${p.most} %.`,
    remedy: (p) => `Choose ${p.most} % or less, or correct the machine’s limit.`,
  },
  'fires-above-rated': {
    message: (p) =>
      `${parts[p.part]} is set to ${p.powerPct} %: overdrive. The tube reaches its rated current at ${p.ratedPct} %.`,
    remedy: (p) =>
      `Choose ${p.ratedPct} % or less. Overdrive wears the tube out. If you want it for the shapes all the same, the request must say so: "overdrive": true.`,
  },
  'fires-beyond-speeds': {
    message: (p) =>
      `${parts[p.part]} is set to ${p.speedMmPerS} mm/s; the machine does ${p.least} to ${p.most} mm/s.`,
    remedy: () => 'Change the speed, or correct the machine’s range of speed.',
  },
  'fires-above-ceiling': {
    message: (p) =>
      `${parts[p.part]} has ${p.times} times the line energy at which the sheet is believed to come through: it would burn.`,
    remedy: (p) =>
      `At ${p.powerPct} % choose ${p.slowestMmPerS} mm/s or faster. If the sheet needs more, say how strong the tube is, or what you cut it with now: the limit follows what is known.`,
  },
  'fires-would-cut': {
    message: (p) =>
      `${parts[p.part]} has ${p.times} times the line energy at which the sheet is believed to come through: it may cut where it should only mark.`,
    remedy: (p) => `At ${p.powerPct} % choose ${p.slowestMmPerS} mm/s or faster, or less power.`,
  },
} satisfies Sentences<CardCode | FiringCode>;
