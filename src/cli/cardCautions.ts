import { cautionsInEnglish } from '../words/en/cautions.ts';

/** The cautions that go with every file of a card, wherever there is room for words. */
export const cardCautions = (): readonly string[] =>
  (['unattended', 'card', 'always'] as const)
    .flatMap((act) => cautionsInEnglish[act])
    .filter(({ essential }) => essential)
    .map(({ sentence }) => sentence);
