import type { ChangedCode, EarlierCode } from '../../core/problems/earlier.ts';
import type { Sentences } from '../shape/sentence.ts';

const remedy = (): string =>
  'Check lens, focus, air and what was typed. If all is as before, it is another kind of sheet, and only its own shapes count.';

import { machinesText } from './screens/machines.ts';

/** What an answer has to say of earlier sheets. */
export const earlierWords = {
  'machine-changed-since': {
    message: (p) =>
      `Everything here was cut before ${p.day}, when the machine was changed (${machinesText.what(p.what)}). It teaches less of what the machine cuts now.`,
    remedy: () => 'Cut a card or a check strip: a few shapes bring the answer back.',
  },
  'earlier-cut-otherwise': {
    message: (p) =>
      `This sheet cuts ${p.byPct} % ${p.way} than earlier sheets of its kind let expect, so the answer does not lean on them.`,
    remedy,
  },
  'earlier-scatter-otherwise': {
    message: (p) =>
      `This sheet's shapes scatter ${p.times} times as widely as on earlier sheets of its kind, so the answer does not lean on them.`,
    remedy,
  },
} satisfies Sentences<ChangedCode | EarlierCode>;
