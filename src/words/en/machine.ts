import type { MachineCode } from '../../core/problems/machine.ts';
import type { Sentences } from '../shape/sentence.ts';

export const machineWords = {
  'tube-reading-impossible': {
    message: (p) =>
      `A tube reading of ${p.currentMa} mA at ${p.powerPct} % setting cannot be: a setting runs from 0 to 100 %, and a current is never below 0 mA.`,
    remedy: () =>
      'Correct that reading, or take it out. Never open the machine to read the meter: read a panel meter with the covers closed.',
  },
  'tube-readings-too-few': {
    message: () =>
      'The tube readings are all at one power setting, and a curve needs two settings at least.',
    remedy: () =>
      'Add the meter’s reading at another setting, or take the readings out: the setting itself is then used.',
  },
  'tube-never-fired': {
    message: () => 'Every tube reading says 0 mA: the tube never fired.',
    remedy: () =>
      'Add readings at settings where the meter shows a current, or take these out. If it shows none at any setting, have the supply looked at by someone qualified: it holds a deadly voltage, after switch-off too.',
  },
  'caustic-too-few-positions': {
    message: (p) => `Widths at ${p.positions} distances do not show where the beam is narrowest.`,
    remedy: () => 'Measure at three distances at least, some on each side of the focus.',
  },
  'caustic-no-waist': {
    message: () => 'These widths do not close in to a narrowest place and open again.',
    remedy: () =>
      'Measure further out on both sides of the focus, and check that each width stands beside its own distance.',
  },
} satisfies Sentences<MachineCode>;
