import { actsOfSettings, type SettingAct } from '../card/cardActs.ts';
import type { Setting } from '../machine/setting.ts';
import { glowsOn } from '../stock/glowsOn.ts';
import type { ProvenSetting } from './provenSetting.ts';

/** What a kept setting, or the one that is run in its place, asks to be watched wherever it stands. */
export const actsOfKept = (
  { holdsFor, setting }: Pick<ProvenSetting, 'holdsFor' | 'setting'>,
  run: Setting = setting,
): readonly SettingAct[] =>
  actsOfSettings({
    settings: [run],
    thicknessMm: holdsFor.measuredThicknessMm ?? holdsFor.nominalThicknessMm,
    glows: glowsOn(holdsFor.material),
  });
