import type { SettingChangeKind } from '../../../core/book/settingChange.ts';
import { counted, listed } from '../terms/figures.ts';

const named = (by: string | undefined): string => by ?? 'somebody who gave no name';
const capital = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}`;

/** Day and time as the person at this screen writes them. */
const when = (at: string): string => new Date(at).toLocaleString();

/** Who read, counted and kept what. */
export const peopleText = {
  title: 'Your name, on this device',
  name: 'Name',
  hint: 'Stands with what is read, counted and kept from here from now on, and goes out in “Everything in one file”. May be left empty.',
  asPhone: (name: string) =>
    `What you read, count and keep here stands under “${name}”, the name that this phone was let in by.`,
  phoneMay: (may: string) => `This phone may ${may}. Whoever runs the place can change that.`,
  when,
  readBy: 'Who read this card?',
  reader: (by: string | undefined, shapes: number, at: string) =>
    `${capital(named(by))}: ${counted(shapes, 'shape')}, the last ${when(at)}.`,
  countedBy: (by: string | undefined, correctedBy: string | undefined) =>
    listed([
      ...(by === undefined ? [] : [`counted by ${by}`]),
      ...(correctedBy === undefined ? [] : [`put right by ${correctedBy}`]),
    ]),
  keptBy: (by: string) => `by ${by}`,
  trail: 'Who changed which kept setting?',
  trailOfOne: 'Who changed this setting?',
  trailLead: 'What was done last can be taken back for 24 hours.',
  empty: 'Nothing has been changed yet.',
  done: {
    kept: (by, code) => `${capital(named(by))} kept setting ${code}.`,
    noted: (by, code) => `${capital(named(by))} changed the note of setting ${code}.`,
    removed: (by, code) => `${capital(named(by))} took setting ${code} out of the book.`,
  } satisfies ByKind,
  takenBack: {
    kept: (by, code) => `${capital(named(by))} put setting ${code} back into the book.`,
    noted: (by, code) => `${capital(named(by))} put back the note that setting ${code} had before.`,
    removed: (by, code) => `${capital(named(by))} took back that setting ${code} was kept.`,
  } satisfies ByKind,
  noteBefore: (note: string) => `The note before: “${note}”`,
  isTakenBack: 'Taken back since.',
  takeBack: 'Take it back',
  takeBackThis: (what: string) => `Take it back: ${what}`,
  showMore: (shown: number, total: number) =>
    `Show more (${String(shown)} of ${String(total)} are shown)`,
};

type ByKind = Record<SettingChangeKind, (by: string | undefined, code: string) => string>;
