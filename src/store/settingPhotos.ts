import type { Kysely } from 'kysely';
import type { SettingPhotoKept, StoredSettingPhoto } from '../app/ports/pictures.ts';
import { settingSubjects, type SettingSubject } from '../core/marking/settingSubjects.ts';
import { base64Of, bytesOfBase64 } from './base64.ts';
import type { SettingPhotoRow, Tables } from './tables.ts';

/** What is known of the photographs of a kept setting, what it cuts first. */
export const settingPhotosOf = async (
  db: Kysely<Tables>,
  entryId: string,
): Promise<readonly SettingPhotoKept[]> => {
  const rows = await db
    .selectFrom('setting_photo')
    .select(['subject', 'kept_at', 'width_px', 'height_px'])
    .where('setting_id', '=', entryId)
    .execute();
  return settingSubjects.flatMap((subject) =>
    rows.flatMap((row) => (row.subject === subject ? [keptOf(subject, row)] : [])),
  );
};

export const settingPhotoOf = async (
  db: Kysely<Tables>,
  entryId: string,
  subject: SettingSubject,
): Promise<StoredSettingPhoto | undefined> => {
  const row = await db
    .selectFrom('setting_photo')
    .selectAll()
    .where('setting_id', '=', entryId)
    .where('subject', '=', subject)
    .executeTakeFirst();
  return row === undefined ? undefined : { ...keptOf(subject, row), jpeg: bytesOfBase64(row.jpeg) };
};

const keptOf = (
  subject: SettingSubject,
  row: Pick<SettingPhotoRow, 'kept_at' | 'width_px' | 'height_px'>,
): SettingPhotoKept => ({
  subject,
  keptAt: row.kept_at,
  widthPx: row.width_px,
  heightPx: row.height_px,
});

/** Keeps one, in the place of that of the same subject. */
export const keepSettingPhoto = async (
  db: Kysely<Tables>,
  entryId: string,
  { subject, keptAt, widthPx, heightPx, jpeg }: StoredSettingPhoto,
): Promise<void> => {
  await deleteSettingPhoto(db, entryId, subject);
  await db
    .insertInto('setting_photo')
    .values({
      setting_id: entryId,
      subject,
      kept_at: keptAt,
      width_px: widthPx,
      height_px: heightPx,
      jpeg: base64Of(jpeg),
    })
    .execute();
};

export const deleteSettingPhoto = async (
  db: Kysely<Tables>,
  entryId: string,
  subject: SettingSubject,
): Promise<void> => {
  await db
    .deleteFrom('setting_photo')
    .where('setting_id', '=', entryId)
    .where('subject', '=', subject)
    .execute();
};
