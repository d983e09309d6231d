import type { NextCardCode, ReasonCode, WarningCode } from '../../core/problems/cutmodel.ts';
import type { Sentences } from '../shape/sentence.ts';

/** What an answer and the next card have to say. */
export const cutmodelWords = {
  'nothing-read-yet': {
    message: () => 'No shape of this sheet has been read yet.',
    remedy: () => 'Lift the card level, tap it once, push lightly, and say what fell out.',
  },
  'all-came-out': {
    message: (p) =>
      `Everything came out, up to ${p.fastestMmPerS} mm/s. That is only a bound: the changeover lies above.`,
    remedy: () => 'Cut the next card: it reaches twice as far to the fast side.',
  },
  'none-came-out': {
    message: (p) =>
      `Nothing came out${p.slowestMmPerS === undefined ? '' : `, down to ${p.slowestMmPerS} mm/s`}. That is only a bound: the changeover lies below.`,
    remedy: () =>
      'Cut the next card: it reaches twice as far to the slow side. Check lens, focus and air first.',
  },
  'nothing-out-at-this-power': {
    message: (p) => `Nothing has come out yet at ${p.powerPct} % or less.`,
    remedy: () => 'Ask at a power at which a shape came out, or cut a card at this power.',
  },
  'no-power-holds-this-speed': {
    message: (p) =>
      `No power up to ${p.powerPct} % is known to keep the promise at ${p.speedMmPerS} mm/s.`,
    remedy: () => 'Ask for a slower speed, a gentler promise, or cut the next card.',
  },
  'slower-than-the-machine': {
    message: (p) =>
      `The speed that would keep the promise is below what the machine runs, ${p.leastMmPerS} mm/s.`,
    remedy: () => 'Use more power, two passes, or a thinner sheet.',
  },
  'most-cells-left-out': {
    message: (p) =>
      `${p.leftOut} of the ${p.cells} shapes count for nothing: what the tube gives at their power settings is not known, since no meter reading is near. Too little is left for a speed.`,
    remedy: () => 'Take meter readings at those settings, or remove the readings of the meter.',
  },
  'power-not-known': {
    message: (p) =>
      `What the tube gives at ${p.powerPct} % is not known: no meter reading is near.`,
    remedy: () => 'Ask within the meter readings, or take readings there.',
  },
  'did-not-converge': {
    message: (p) =>
      `The computation did not settle (${p.points} effective lines), so no setting is given.`,
    remedy: () =>
      'That is a limit of this tool, not of your readings. Ask about the last card and the last orders alone.',
  },
  'welds-before-it-cuts': {
    message: (p) =>
      `At ${p.powerPct} % no speed is sure enough yet: slower the shapes weld back behind the beam, faster they are not through. Best known is ${p.speedMmPerS} mm/s, where about ${p.outOf100} in 100 come out.`,
    remedy: () =>
      'Cut more shapes near it; or try a card with more air along the cut, or at another power.',
  },
  'slower-would-not-help': {
    message: (p) =>
      p.because === 'pockets'
        ? `Of ${p.parts} parts at ${p.speedMmPerS} mm/s ${p.pockets} met a flaw of the sheet: slower would not help, that is in the sheet.`
        : `At ${p.speedMmPerS} mm/s as many parts failed as at ${p.fasterMmPerS} mm/s: slower does not seem to help.`,
    remedy: (p) =>
      p.because === 'pockets'
        ? 'Cut more parts than you need, or take another sheet.'
        : 'Look at the sheet for flaws, and at lens, focus and air, before you slow down further.',
  },
  'corners-rest-on-prior': {
    message: () =>
      'Some shapes ran on less corner power; what that costs is still more belief than measurement.',
    remedy: () =>
      'The answer holds for equal corner power. Cut a card that varies corner power to learn the rest.',
  },
  'cut-on-corner-power': {
    message: (p) =>
      `${p.cells} shapes were no faster than ${p.startMmPerS} mm/s, where the power ramp starts, so they were taken as cut on the corner power throughout.`,
    remedy: () => 'At such speeds type the same figure for both powers.',
  },
  'power-says-nothing': {
    message: (p) =>
      `${p.cells} shapes at ${p.powers} % were left out: the tube does not fire there, or no meter reading is near.`,
    remedy: () => 'Check the power that was typed, or take meter readings there.',
  },
  'guess-below-slowest-cell': {
    message: (p) =>
      `${p.speedMmPerS} mm/s is a guess: nothing so slow was cut; the slowest was ${p.slowestMmPerS} mm/s.`,
    remedy: () => 'Cut the next card, which tries such speeds, before relying on it.',
  },
  'held-to-fastest-out': {
    message: (p) =>
      `Held to ${p.speedMmPerS} mm/s, the fastest that came out at ${p.powerPct} % or less.`,
    remedy: () => 'A card with faster shapes may free a faster setting.',
  },
  'changeover-off-the-card': {
    message: (p) =>
      `At ${p.powerPct} % the changeover, about ${p.v50MmPerS} mm/s, lies off what was cut (${p.slowestMmPerS} to ${p.fastestMmPerS} mm/s).`,
    remedy: () => 'Cut the next card, which straddles it.',
  },
  'speeds-told-little': {
    message: (p) =>
      `The shapes at ${p.speeds} mm/s told little: how they ended was all but certain.`,
    remedy: () => 'The next card spends its shapes nearer the changeover.',
  },
  'thin-evidence': {
    message: (p) =>
      `At ${p.powerPct} % it would probably hold up to ${p.evenMmPerS} mm/s. To be as sure as you ask, stay at ${p.speedMmPerS}: ${p.cells === '0' ? 'without a card nobody knows it closer.' : `the gap comes from having only ${p.cells} shapes.`}`,
    remedy: () => 'The next card should narrow it.',
  },
  'disagreement-is-noise': {
    message: (p) =>
      `At ${p.speeds} mm/s a shape ended worse than one cut no stronger and no slower. That is ordinary scatter, not a contradiction.`,
    remedy: () => 'Nothing needs to be done; no single shape is taken at its word.',
  },
  'scatter-rests-on-prior': {
    message: (p) =>
      p.cells === '0'
        ? 'How much shapes scatter rests on experience with other sheets: no card of this one was read.'
        : `How much shapes scatter rests mostly on experience with other sheets, not on these ${p.cells} shapes.`,
    remedy: () => 'More shapes near the changeover, or counts of orders, teach it.',
  },
  'flaws-not-learnt': {
    message: () =>
      'How often this material has flaws, where no setting gets through, cannot be told yet.',
    remedy: () =>
      'Counts of orders tell it: count parts lost to a flaw apart from those that need a knife.',
  },
  'welds-back': {
    message: (p) =>
      `${p.welded} of ${p.through} shapes that were cut through welded back behind the beam: too slow is a failure too. At ${p.speedMmPerS} mm/s and ${p.powerPct} % ${p.of100 === '0' ? 'hardly any part' : `about ${p.of100} in 100 parts`} with ${p.partLengthMm} mm of cut will${p.slowestMmPerS === undefined ? '' : `; slower than ${p.slowestMmPerS} mm/s too many do`}.`,
    remedy: () =>
      'Never mend a part that welds back by cutting slower. More air along the cut helps.',
  },
  'perhaps-welded': {
    message: (p) =>
      `${p.cells} slower shapes, at ${p.speeds} mm/s, did not come out where faster ones did. Acrylic that is cut too slowly closes again behind the beam.`,
    remedy: () =>
      'Look at the cut: where it closed again, mark the shape as spoilt, welded back. Else it counts as too fast, and the answer is slower than it need be.',
  },
  'flaws-beside-the-promise': {
    message: (p) =>
      `The promise is of sound material; beside it this stock has about ${p.flawsPerMetre} flaws a metre of cut.`,
    remedy: () => 'Plan a few more parts for them.',
  },
  'tally-stood-in': {
    message: () => 'No card shows where the changeover lies; the count of an order stood in.',
    remedy: () => 'A card across the changeover makes the answer firmer.',
  },
  'habit-stood-in': {
    message: () => 'No card shows where the changeover lies; what you cut it with now stood in.',
    remedy: () => 'A card across the changeover makes the answer firmer.',
  },
  'air-compared': {
    message: (p) =>
      `Air ${p.air} against ${p.against}: ${p.fasterPct} % faster (between ${p.lowPct} and ${p.highPct} %), ${p.sureFasterPct} % sure that it is faster at all.`,
    remedy: () => 'A card with both, half and half, would settle it.',
  },
  'asked-overdrives': {
    message: (p) =>
      `${p.powerPct} % is above the limit of ${p.limitPct} %${p.ratedMa === undefined ? '' : ` (tube rated ${p.ratedMa} mA)`}. The answer is for ${p.limitPct} %.`,
    remedy: () =>
      'Stay at or below the limit: above its rated current a tube ages fast. See its maker’s manual.',
  },
  'cells-overdrove': {
    message: (p) =>
      `${p.cells} shapes were cut at ${p.powers} %, above the tube’s rated ${p.ratedMa === undefined ? 'current' : `${p.ratedMa} mA`}.`,
    remedy: () => 'They count as evidence, but no such setting is recommended.',
  },
  'power-beyond-the-card': {
    message: (p) =>
      `No shape was cut near ${p.powerPct} %: the answer there leans on how speed rises with power.`,
    remedy: () => 'Cut the next card at that power before relying on it.',
  },
  'cut-this-card': {
    message: (p) => `This card is expected to gain ${p.gainPct} % of speed.`,
    remedy: () => 'Cut it from the same sheet or batch.',
  },
  'not-worth-another-sheet': {
    message: (p) => `Enough: another card would gain about ${p.gainPct} %.`,
    remedy: () => 'Keep the setting, and count the order.',
  },
  'reaches-the-answer': {
    message: (p) =>
      `The answer, ${p.speedMmPerS} mm/s at ${p.powerPct} %, is a guess: it lies outside what was cut. This card reaches it.`,
    remedy: () => 'Cut it from the same sheet or batch before relying on the answer.',
  },
  'first-card': {
    message: () => 'Nothing has been cut yet: this card spans what such sheets usually need.',
    remedy: () => 'Cut it on an offcut of this batch.',
  },
  'double-the-range-faster': {
    message: (p) => `Everything came out, so this card goes well above ${p.fastestMmPerS} mm/s.`,
    remedy: () => 'Cut it from the same sheet or batch.',
  },
  'double-the-range-slower': {
    message: (p) => `Nothing came out, so this card goes well below ${p.slowestMmPerS} mm/s.`,
    remedy: () =>
      'Check lens, focus and air, then cut it. Slow, strong shapes burn most: watch them.',
  },
} satisfies Sentences<NextCardCode | ReasonCode | WarningCode>;
