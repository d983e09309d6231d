import type { SlowCut } from '../../../core/machine/machine.ts';
import { lengthWords, powerWords, speedWords } from '../terms/figures.ts';

/** The question how strong a machine is, asked once before its first card. */
export const strengthText = {
  question: 'About how strong is your machine?',
  ways: {
    watts: { label: 'I know the watts', more: 'What the tube was sold as, such as 60 W.' },
    'slow-cut': {
      label: 'I know one slow setting that has cut this sheet',
      more: 'Slow, but not a crawl: one that you would use again.',
    },
    unknown: {
      label: 'I don’t know',
      more: 'The card then reaches from what a weak tube cuts to what a strong one does.',
    },
  },
  watts: 'Sold as',
  slowSpeed: 'Speed that has cut',
  slowPower: 'at the power setting',
  stored: 'It counts for every sheet of this machine; you can change it on the machine’s page.',
  bySlowCut: ({ material, thicknessMm, speedMmPerS, powerPct }: SlowCut) =>
    `Known by one slow setting: ${lengthWords(thicknessMm)} ${material} at ${speedWords(speedMmPerS)}, ${powerWords(powerPct)}.`,
  forget: 'Forget this setting',
};
