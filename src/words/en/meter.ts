import type { MeterCode } from '../../core/problems/meter.ts';
import type { MeterCompareCode } from '../../core/problems/meterings.ts';
import type { Sentences } from '../shape/sentence.ts';

/** What is asked of meter readings, and what they cannot tell. */
export const meterWords = {
  'meter-plan-needs-rating': {
    message: () => 'Without the tube’s rated current nobody knows where to stop.',
    remedy: () =>
      'Type it from the label on the tube or from its maker’s sheet. If it cannot be read, ask the maker; do not guess upwards.',
  },
  'meter-beyond-readings': {
    message: (p) =>
      `Nobody has read the meter at ${p.powerPct} %: the readings run from ${p.leastPct} to ${p.mostPct} %.`,
    remedy: () => 'Read the meter there, if that setting is within the tube’s rating.',
  },
  'meter-between-dark-and-lit': {
    message: (p) =>
      `At ${p.powerPct} % the tube may or may not fire: it was dark at ${p.darkAtPct} % and fired at ${p.firesAtPct} %.`,
    remedy: (p) => `Stay at ${p.firesAtPct} % or above; work just above the threshold is unsteady.`,
  },
  'meter-current-not-reached': {
    message: (p) =>
      `${p.currentMa} mA was not reached: the highest setting read, ${p.mostPct} %, drew ${p.mostMa} mA.`,
    remedy: () =>
      'A line drawn on into the unknown would be a guess. Read the meter at a higher setting, if that is within the tube’s rating.',
  },
  'meter-current-below-firing': {
    message: (p) =>
      `The tube never burns at ${p.currentMa} mA: it begins at ${p.firesAtPct} % with ${p.leastMa} mA.`,
    remedy: () => 'Ask for a higher current.',
  },
  'meter-reading-doubtful': {
    message: (p) =>
      `At ${p.powerPct} % the meter is written down as ${p.currentMa} mA; the settings beside it lead one to expect about ${p.expectedMa} mA.`,
    remedy: () =>
      'Look at that figure once more, and at the setting that was typed. If it reads the same again, leave it: the supply may have come to its end there.',
  },
  'meter-reading-reversed': {
    message: (p) =>
      `More setting drew less: ${p.lowMa} mA at ${p.lowPct} %, but ${p.highMa} mA at ${p.highPct} %.`,
    remedy: () =>
      'Read both again, let the tube rest between. Until then the curve runs level there.',
  },
  'meter-repeats-apart': {
    message: (p) =>
      `At ${p.powerPct} % the meter was read as ${p.lowMa} and as ${p.highMa} mA: farther apart than anywhere else.`,
    remedy: () => 'Read that setting a third time and take out the figure that was a slip.',
  },
  'meter-drifts': {
    message: (p) => `The second round drew ${p.byPct} % ${p.which} than the first, all along.`,
    remedy: () =>
      'The tube or its water was still warming up. Let it run warm as for work, then read again.',
  },
  'meter-flickers': {
    message: (p) => `At ${p.powerPct} % the tube fired one time and not another.`,
    remedy: () => 'That is its threshold. Do not work there: corners would drop out.',
  },
  'meter-fired-below-dark': {
    message: (p) => `It fired at ${p.litPct} % and stayed dark at ${p.darkPct} %.`,
    remedy: () => 'One of the two is a slip, or the tube fires unsteadily there. Read both again.',
  },
  'meter-above-rated': {
    message: (p) =>
      `At ${p.powerPct} % the tube drew ${p.currentMa} mA: above its rated ${p.ratedMa} mA.`,
    remedy: () => 'Go no higher, and do not fire there again: overdrive shortens the tube’s life.',
  },
  'meter-no-repeats': {
    message: () => 'Each setting was read once, so nobody knows how far a reading can be trusted.',
    remedy: () => 'Go through the settings a second time, from the top down.',
  },
  'meter-never-dark': {
    message: (p) =>
      `It fired at the lowest setting tried, ${p.firesAtPct} %: where it begins to fire is not known.`,
    remedy: () => 'Try lower settings until it stays dark.',
  },
  'meter-wide-gap': {
    message: (p) =>
      `Between ${p.lowPct} and ${p.highPct} % nobody read the meter: the curve may bend there unseen.`,
    remedy: () => 'Read one setting half-way between.',
  },
  'meter-water-warm': {
    message: (p) => `The water was at ${p.waterC} °C: warm water weakens the tube.`,
    remedy: () =>
      'Let it cool to where the maker wants it, and find out why it is warm, before relying on cuts.',
  },
  'meter-water-cold': {
    message: (p) =>
      `The water was at ${p.waterC} °C: colder than the room’s dew point, it lets water settle on the tube.`,
    remedy: () =>
      'No work with condensation near the high voltage. Let it come to what the maker wants.',
  },
  'meterings-of-other-machines': {
    message: (p) => `One metering is of “${p.before}”, the other of “${p.now}”.`,
    remedy: () => 'Choose two of the same machine.',
  },
  'meterings-without-overlap': {
    message: () => 'The two meterings were read at settings that have nothing in common.',
    remedy: () => 'Read the meter again over the settings of the earlier one.',
  },
  'meterings-too-noisy': {
    message: (p) =>
      `The readings scatter so much that a change of ${p.withinPct} % would not be seen.`,
    remedy: () =>
      'Read each setting two or three times more, with the tube warm and the needle at rest, and compare again.',
  },
  'meterings-rated-otherwise': {
    message: (p) => `The tube was rated ${p.beforeMa} mA then and is rated ${p.nowMa} mA now.`,
    remedy: () =>
      'If another tube is in the machine, a moved curve is no fault: start anew with it.',
  },
  'meterings-water-differs': {
    message: (p) => `The water was at ${p.beforeC} °C then and at ${p.nowC} °C now.`,
    remedy: () =>
      'Read the meter again with the water as it was then before you look for another cause.',
  },
} satisfies Sentences<MeterCode | MeterCompareCode>;
