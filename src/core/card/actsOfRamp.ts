/** What a person is about to do at the machine with a focus ramp, for its cautions. */
export const actsOfRamp = ['focus', 'unattended', 'fire', 'beforeCut', 'always'] as const;
