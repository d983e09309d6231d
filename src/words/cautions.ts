import type { Caution, CautionAct } from './caution.ts';
import { cautionsInEnglish } from './en/cautions.ts';
import type { Language } from './words.ts';

const inLanguage: Readonly<Record<Language, Readonly<Record<CautionAct, readonly Caution[]>>>> = {
  en: cautionsInEnglish,
};

/**
 * The cautions for an act, those that matter most first. They never say that something is safe, and do not replace the
 * machine's manual, local law or a laser safety officer; the first of `always` says so.
 */
export const cautionsFor = (act: CautionAct, language: Language = 'en'): readonly Caution[] => {
  const own = inLanguage[language][act];
  return [
    ...own.filter(({ essential }) => essential),
    ...own.filter(({ essential }) => !essential),
  ];
};

/** The few lines for a narrow place: the essential cautions of several acts, in this order. */
export const essentialCautions = (
  acts: readonly CautionAct[],
  language: Language = 'en',
): readonly Caution[] =>
  acts.flatMap((act) => cautionsFor(act, language).filter(({ essential }) => essential));
