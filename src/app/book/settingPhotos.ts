import type { SettingSubject } from '../../core/marking/settingSubjects.ts';
import { done, refused, type Outcome } from '../../core/problem.ts';
import type { SettingPhotoKept, StoredSettingPhoto } from '../ports/pictures.ts';
import type { Ports } from '../ports/ports.ts';
import { findEntry } from '../shared/entryStanding.ts';

type Stored = Pick<Ports, 'store'>;

/** What is known of the photographs of a kept setting. Refuses: `entry-not-found`. */
export const listSettingPhotos = (
  { store }: Stored,
  entry: string,
): Promise<Outcome<readonly SettingPhotoKept[]>> =>
  store.read(async (session) => {
    const found = await findEntry(session, entry);
    return found.ok ? done(await session.settingPhotosOf(found.value.id)) : found;
  });

/** One of them, whole. Refuses: `entry-not-found`, `setting-photo-not-kept`. */
export const readSettingPhoto = (
  { store }: Stored,
  entry: string,
  subject: SettingSubject,
): Promise<Outcome<StoredSettingPhoto>> =>
  store.read(async (session) => {
    const found = await findEntry(session, entry);
    if (!found.ok) return found;
    const photo = await session.settingPhoto(found.value.id, subject);
    return photo === undefined
      ? refused('setting-photo-not-kept', { entry: found.value.code, subject })
      : done(photo);
  });

/** Takes one away. One that is not there is gone already. Refuses: `entry-not-found`. */
export const removeSettingPhoto = (
  { store }: Stored,
  entry: string,
  subject: SettingSubject,
): Promise<Outcome<undefined>> =>
  store.change(async (session) => {
    const found = await findEntry(session, entry);
    if (!found.ok) return found;
    await session.deleteSettingPhoto(found.value.id, subject);
    return done(undefined);
  });
