import type { CautionAct } from '../../shape/caution.ts';

/** What an act asks for, in a few words, where its cautions stood in full before. */
const again: Readonly<Record<CautionAct, string>> = {
  always: 'local rules first, lid shut, extraction on',
  unattended: 'never leave it while it runs',
  fire: 'extinguisher within reach; stop the beam if a flame stays',
  card: 'clips clear, dry run first',
  beforeCut: 'water flowing, air on, emergency stop within reach',
  injury: 'after a hit on eye or skin: stop, local emergency number, doctor',
  airOff: 'air off: flames stand, watch every second, extinguisher in hand',
  slowThick: 'slow through thick sheet glows on: look below, and again after some minutes',
  newMaterial: 'unknown plastic is not cut',
  current: 'danger of death at the tube supply: never open the machine',
  focus: 'measure stopped, beam disabled; the ramp clears the head',
  airComparison: 'low air, not off',
  photo: 'photo after the run, beam disarmed',
  timedJobs: 'beam disarmed, bed empty',
  marking: 'extraction on while it fills, dust wiped off damp, no vinyl tape',
};

/** Around the cautions. */
export const cautionsText = {
  title: 'Take care',
  more: 'More cautions',
  again: (acts: readonly CautionAct[]) => {
    const line = acts.map((act) => again[act]).join(' · ');
    return `${line.charAt(0).toUpperCase()}${line.slice(1)}.`;
  },
  inFull: 'In full again',
};
