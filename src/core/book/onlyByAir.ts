import { airKey } from '../machine/air.ts';
import { settingKey } from '../machine/setting.ts';
import { omit } from '../omit.ts';
import type { ProvenSetting } from './provenSetting.ts';

/** A text that is equal for settings of one stock that a person would type alike but for the air. */
const keyBesideAir = ({ holdsFor, setting, isExample }: ProvenSetting): string =>
  JSON.stringify([
    isExample,
    holdsFor.machineId ?? '',
    holdsFor.material.trim().toLowerCase(),
    holdsFor.nominalThicknessMm,
    (holdsFor.batch ?? '').trim().toLowerCase(),
    settingKey(omit(setting, 'air')),
  ]);

/** The kept settings from which one differs only by air: whoever takes one for the other loses its promise. */
export const onlyByAir = (
  entry: ProvenSetting,
  others: readonly ProvenSetting[],
): readonly ProvenSetting[] =>
  others.filter(
    (other) =>
      other.id !== entry.id &&
      keyBesideAir(other) === keyBesideAir(entry) &&
      airKey(other.setting.air) !== airKey(entry.setting.air),
  );
