import type { SettingSubject } from '../../../core/marking/settingSubjects.ts';

const subjects: Readonly<Record<SettingSubject, string>> = {
  cut: 'The cut',
  score: 'The score',
  engrave: 'The engraving',
  tape: 'The tape',
};

const inSentence = (subject: SettingSubject): string => subjects[subject].toLowerCase();

/** Photographs kept with a kept setting. */
export const settingPhotoText = {
  title: 'Keep a photo with it',
  more: 'What comes out of it, for whoever cuts it next. Made smaller, without where and when it was taken.',
  of: 'What does it show?',
  subjects,
  take: 'Take a photo',
  choose: 'Choose a photo',
  replaces: 'One is kept already: the next takes its place.',
  keeping: 'Keeping the photo …',
  keptSaid: 'Kept.',
  kept: (subject: SettingSubject) => `Photo of ${inSentence(subject)}`,
  remove: (subject: SettingSubject) => `Remove the photo of ${inSentence(subject)}`,
  removeAsk: 'It cannot be brought back.',
} as const;
