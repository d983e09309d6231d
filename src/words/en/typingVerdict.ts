import type { TimeVerdict, TypingSuspect } from '../../core/card/mistypedByTime.ts';
import { cellWords } from '../../core/card/settingWords.ts';
import { durationWords } from './terms/figures.ts';

const entryName = (label: string): string =>
  ({ marks: 'Words and marks', window: 'Window and outline', outline: 'The outline' })[label] ??
  `Setting ${label}`;

const suspect = ({ label, meant, probably, how }: TypingSuspect): string =>
  how === 'not-changed'
    ? `${entryName(label)}: ${cellWords(probably)} may have been left standing; it should be ${cellWords(meant)}.`
    : `${entryName(label)}: typed as ${cellWords(probably)} perhaps; it should be ${cellWords(meant)}.`;

const heads: Readonly<Record<TimeVerdict['verdict'], (verdict: TimeVerdict) => string>> = {
  'as-expected': ({ showsFromSeconds }) =>
    `It took as long as it should. A speed typed wrong that changes the time by less than ${durationWords(showsFromSeconds)} does not show, nor does power.`,
  mistyped: ({ suspects }) =>
    suspects.length === 1
      ? 'The time says that an entry was typed wrong.'
      : 'The time says that an entry was typed wrong, one of these most likely.',
  unclear: ({ expectedSeconds, suspects }) =>
    `It should have taken about ${durationWords(expectedSeconds)}. ${suspects.length === 0 ? 'No usual slip of the fingers explains that: an override, a pause, or another file?' : 'A slip would explain it, but not for certain.'}`,
  'motion-unknown': () =>
    'How this machine moves is not known closely enough to tell from the time what was typed.',
};

/** What the time of a card says of what was typed, as sentences: the verdict, then each suspect. */
export const typingVerdictWords = (verdict: TimeVerdict): readonly string[] => [
  heads[verdict.verdict](verdict),
  ...verdict.suspects.map(suspect),
];
