/** The parts of a setting. */
export const settingText = { speed: 'Speed', power: 'Power setting' };
