import type { SettingSubject } from '../../core/marking/settingSubjects.ts';
import { done, type Outcome } from '../../core/problem.ts';
import type { Pictures, SettingPhotoKept } from '../ports/pictures.ts';
import type { Ports } from '../ports/ports.ts';
import { findEntry } from '../shared/entryStanding.ts';
import { pictureToKeep } from '../shared/pictureToKeep.ts';

export interface SettingPhotoToKeep {
  /** Its id, or the code on its label. */
  readonly entry: string;
  readonly subject: SettingSubject;
  readonly bytes: Uint8Array;
}

/**
 * Keeps a photograph with a kept setting, in the place of the one of the same subject, as a card's is kept. Refuses:
 * `entry-not-found`, and what is no photograph, too large, too small or broken.
 */
export const keepSettingPhoto = async (
  { store, ...ports }: Ports & { readonly pictures: Pictures },
  { entry, subject, bytes }: SettingPhotoToKeep,
): Promise<Outcome<SettingPhotoKept>> => {
  const isThere = await store.read((session) => findEntry(session, entry));
  if (!isThere.ok) return isThere;
  const picture = await pictureToKeep(ports, bytes, subject);
  if (!picture.ok) return picture;
  const { jpeg } = picture.value;
  const kept: SettingPhotoKept = { subject, ...picture.value.kept };
  return store.change(async (session) => {
    const found = await findEntry(session, entry);
    if (!found.ok) return found;
    await session.keepSettingPhoto(found.value.id, { ...kept, jpeg });
    return done(kept);
  });
};
