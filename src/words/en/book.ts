import type { BookCode } from '../../core/problems/book.ts';
import type { Sentences } from '../shape/sentence.ts';

export const bookWords = {
  'holds-for-other-machine': {
    message: (p) => `It was proven on “${p.kept}”, not on “${p.here}”.`,
    remedy: () => 'Per cent of one machine are not per cent of another: cut a card here.',
  },
  'holds-for-another-machine': {
    message: () => 'It was proven on another machine than the one that this sheet lies on.',
    remedy: () => 'Per cent of one machine are not per cent of another: cut a card here.',
  },
  'holds-for-other-material': {
    message: (p) => `It was proven in ${p.kept}; this is ${p.here}.`,
    remedy: () => 'Do not use it here. Cut a card of this sheet.',
  },
  'holds-for-material-named-otherwise': {
    message: (p) => `It was proven in “${p.kept}”; this sheet is called “${p.here}”.`,
    remedy: () => 'If it is the same board, name it the same; if not, cut a short check first.',
  },
  'holds-for-other-thickness': {
    message: (p) =>
      `It was proven on ${p.keptMm} mm; this sheet is ${p.hereMm} mm, which cuts about ${p.speedChangePct} % ${p.which}.`,
    remedy: () => 'Do not use it here. Cut a card of this sheet.',
  },
  'holds-for-other-caliper': {
    message: (p) =>
      `The same label, but it was proven on ${p.keptMm} mm and this sheet measures ${p.hereMm} mm: expect it about ${p.speedChangePct} % ${p.which}.`,
    remedy: () => 'Cut a short check in the waste before the order.',
  },
  'holds-for-other-batch': {
    message: (p) => `The promise is of batch “${p.kept}”; this is batch “${p.here}”.`,
    remedy: () =>
      'Cut a short check in the waste before the order, or ask for a promise that covers a new batch.',
  },
  'holds-for-batch-not-named': {
    message: () => 'The promise is of one batch, and nobody noted whether this sheet is of it.',
    remedy: () => 'Note the batch, or cut a short check in the waste before the order.',
  },
  'holds-for-other-sheet': {
    message: (p) => `The promise is of one sheet (${p.kept}); this one is ${p.here}.`,
    remedy: () => 'Cut a short check in the waste before the order.',
  },
  'holds-for-sheet-not-named': {
    message: () => 'The promise is of one sheet, and nobody noted whether this is the one.',
    remedy: () => 'Cut a short check in the waste before the order.',
  },
  'holds-for-power-above-limit': {
    message: (p) => `It asks for ${p.powerPct} %; on this machine the limit is ${p.limitPct} %.`,
    remedy: () => 'Do not run it. Ask for a setting within the limit.',
  },
  'holds-for-speed-out-of-range': {
    message: (p) =>
      `It asks for ${p.speedMmPerS} mm/s; this machine runs ${p.least} to ${p.most} mm/s.`,
    remedy: () => 'Ask for a setting within what the machine does.',
  },
} satisfies Sentences<BookCode>;
