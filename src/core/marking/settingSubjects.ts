import { markKinds } from './mark.ts';

/** What of a kept setting is photographed: what it cuts, and each mark beside it. */
export const settingSubjects = ['cut', ...markKinds] as const;
export type SettingSubject = (typeof settingSubjects)[number];
