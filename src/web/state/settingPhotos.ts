import { useQuery, useQueryClient } from '@tanstack/react-query';
import type { SettingSubject } from '../../core/marking/settingSubjects.ts';
import { pagePhotoApi } from '../../wire/pageLaterApi.ts';
import { addressOf } from '../../wire/route.ts';
import { call, callOrThrow, type CallOutcome } from './call.ts';
import { keepPicture, pictureTimeLimitMs } from './keepPicture.ts';

const keyOf = (id: string) => ['setting-photos', id];

/** What is known of the photographs kept with a kept setting. */
export const useSettingPhotos = (id: string) =>
  useQuery({
    queryKey: keyOf(id),
    queryFn: () => callOrThrow(pagePhotoApi.listSettingPhotos, { params: { id } }),
  });

/** `keptAt` makes a new photograph a new address, so that no old one is shown. */
export const settingPhotoAddress = (id: string, subject: SettingSubject, keptAt: string): string =>
  addressOf(pagePhotoApi.settingPhoto, { id, subject }, { at: keptAt });

/** Keeps and takes away photographs of a kept setting, and has what was known of them asked anew. */
export const useKeepSettingPhotos = (id: string) => {
  const cache = useQueryClient();
  const asked = async <T>(outcome: Promise<CallOutcome<T>>): Promise<CallOutcome<T>> => {
    const done = await outcome;
    await cache.invalidateQueries({ queryKey: keyOf(id) });
    return done;
  };
  return {
    keep: (subject: SettingSubject, photo: File) =>
      keepPicture(photo, photo.name, (file) =>
        asked(
          call(pagePhotoApi.keepSettingPhoto, {
            params: { id, subject },
            file,
            timeLimitMs: pictureTimeLimitMs,
          }),
        ),
      ),
    remove: (subject: SettingSubject) =>
      asked(call(pagePhotoApi.removeSettingPhoto, { params: { id, subject } })),
  };
};
