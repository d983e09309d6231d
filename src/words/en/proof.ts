import type { ProofCode } from '../../core/problems/proof.ts';
import type { Sentences } from '../shape/sentence.ts';

export const proofWords = {
  'proof-open-outline': {
    message: (p) =>
      p.count === '1'
        ? `An outline does not close: its ends are ${p.gapMm} mm apart.`
        : `${p.count} outlines do not close: their ends are up to ${p.gapMm} mm apart.`,
    remedy: () => 'Close them in the drawing, unless they are meant as slits.',
  },
  'proof-in-pieces': {
    message: (p) =>
      p.count === '1'
        ? `An outline is drawn in ${p.pieces} pieces: the head stops where they meet.`
        : `${p.count} outlines are drawn in ${p.pieces} pieces: the head stops where they meet.`,
    remedy: () => 'Join the pieces in the drawing: every stop costs time and leaves a mark.',
  },
  'proof-cut-twice': {
    message: (p) => `${p.lengthMm} mm of line lie on other lines: they are cut twice.`,
    remedy: () => 'Delete what is drawn twice: a second pass chars, and can set alight.',
  },
  'proof-outside-first': {
    message: (p) =>
      p.count === '1'
        ? 'An outline is cut after the one around it.'
        : `${p.count} outlines are cut after the ones around them.`,
    remedy: () =>
      'A freed part drops or tilts, and spoils what comes after: put the inner lines first.',
  },
  'proof-cuts-close': {
    message: (p) =>
      `Cuts come as near as ${p.leastMm} mm to one another, closer than the sheet is thick (${p.thicknessMm} mm): ${p.pairs} times.`,
    remedy: () =>
      'Narrow bridges char, break or catch fire. Move the lines apart, do not cut them one right after the other, and watch.',
  },
  'proof-nothing-to-cut': {
    message: () => 'The drawing has no line to cut.',
    remedy: () => 'Turn text and pictures into outlines, or take in lines that were left out.',
  },
  'proof-no-setting': {
    message: () => 'There is no setting yet to prove on the drawing.',
    remedy: () => 'Read a card first, or say which power and speed you want to see proven.',
  },
  'proof-overdrives': {
    message: (p) =>
      `At ${p.powerPct} % the tube runs above its rated current, which it reaches at ${p.ratedPct} %. That wears it out.`,
    remedy: (p) => `Stay at ${p.ratedPct} % or below.`,
  },
  'proof-power-not-known': {
    message: (p) =>
      `What ${p.powerPct} % delivers, in the corners or on the straight, is not told by the meter readings of this machine.`,
    remedy: () => 'Stay between the lowest and the highest reading, or take more.',
  },
  'proof-faster-than-any-out': {
    message: (p) =>
      p.fastestMmPerS === '0'
        ? `Nothing has come out yet at ${p.powerPct} % or less.`
        : `Nothing faster than ${p.fastestMmPerS} mm/s has come out yet at ${p.powerPct} % or less.`,
    remedy: () => 'What is said of this setting is a guess. Cut a card that goes there first.',
  },
  'proof-below-start-speed': {
    message: (p) =>
      `The whole path runs on the corner power: ${p.speedMmPerS} mm/s is not above the speed at which this machine begins to add power (${p.startMmPerS} mm/s).`,
    remedy: () =>
      'Type the power that you want as corner power too, or lower the speed at which the power ramp starts, as the manual says.',
  },
  'proof-too-many-to-compare': {
    message: (p) =>
      `The drawing has ${p.segments} pieces of line: too many to look for lines cut twice or too close.`,
    remedy: () => 'Prove a part of it by itself, or draw its curves more simply.',
  },
  'proof-too-much-to-plan': {
    message: (p) =>
      `The drawing has ${p.lines} lines of ${p.segments} pieces: more than ${p.mostLines} lines or ${p.mostSegments} pieces are not worked through.`,
    remedy: () =>
      'Prove a part of it by itself, leave out layers that are not cut through, or draw its curves more simply.',
  },
} satisfies Sentences<ProofCode>;
