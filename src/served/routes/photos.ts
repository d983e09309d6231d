import { keepSettingPhoto } from '../../app/book/keepSettingPhoto.ts';
import {
  listSettingPhotos,
  readSettingPhoto,
  removeSettingPhoto,
} from '../../app/book/settingPhotos.ts';
import { gradeKeptPhotos } from '../../app/card/gradeKeptPhotos.ts';
import { keepPhoto } from '../../app/card/keepPhoto.ts';
import { listPhotos, readKeptPhoto, removePhoto } from '../../app/card/keptPhotos.ts';
import type { Pictures } from '../../app/ports/pictures.ts';
import { photoLimits } from '../../core/photo/photoLimits.ts';
import { andThen, done, refused } from '../../core/problem.ts';
import { problemInWords } from '../../words/words.ts';
import { photoApi } from '../../wire/photo.ts';
import { FileAnswer } from '../fileAnswer.ts';
import type { Site } from '../site.ts';
import type { ServedPorts } from '../servedPorts.ts';

/** Photographs kept with cards, and read; and with kept settings. */
export const photoRoutes = (site: Site, ports: ServedPorts, pictures: Pictures): void => {
  site.put(photoApi.listPhotos, async ({ params: { id, code } }) =>
    done({ photos: await listPhotos(ports, { studyId: id, code }) }),
  );
  site.put(
    photoApi.keepPhoto,
    async ({ params: { id, code, side }, file }) =>
      file !== undefined
        ? andThen(
            await keepPhoto({ ...ports, pictures }, { studyId: id, code, side, bytes: file }),
            (photo) => done({ photo }),
          )
        : refused('photo-not-a-picture', { file: side }),
    { bodyLimit: photoLimits.bytes },
  );
  site.put(photoApi.cardPhoto, async ({ params: { id, code, side } }) => {
    const photo = await readKeptPhoto(ports, { studyId: id, code }, side);
    if (!photo.ok) return photo;
    return done(new FileAnswer({ contentType: 'image/jpeg', body: photo.value.jpeg }));
  });
  site.put(photoApi.removePhoto, async ({ params: { id, code, side } }) =>
    andThen(await removePhoto(ports, { studyId: id, code }, side), () => done({ removed: true })),
  );
  site.put(photoApi.listSettingPhotos, async ({ params: { id } }) =>
    andThen(await listSettingPhotos(ports, id), (photos) => done({ photos })),
  );
  site.put(
    photoApi.keepSettingPhoto,
    async ({ params: { id, subject }, file }) =>
      file !== undefined
        ? andThen(
            await keepSettingPhoto({ ...ports, pictures }, { entry: id, subject, bytes: file }),
            (photo) => done({ photo }),
          )
        : refused('photo-not-a-picture', { file: subject }),
    { bodyLimit: photoLimits.bytes },
  );
  site.put(photoApi.settingPhoto, async ({ params: { id, subject } }) =>
    andThen(await readSettingPhoto(ports, id, subject), ({ jpeg }) =>
      done(new FileAnswer({ contentType: 'image/jpeg', body: jpeg })),
    ),
  );
  site.put(photoApi.removeSettingPhoto, async ({ params: { id, subject } }) =>
    andThen(await removeSettingPhoto(ports, id, subject), () => done({ removed: true })),
  );
  site.put(photoApi.gradeCard, async ({ params: { id, code }, gone }) =>
    andThen(
      await gradeKeptPhotos({ ...ports.until(gone), pictures }, { studyId: id, code }),
      ({ remarks, ...graded }) =>
        done({ ...graded, remarks: remarks.map((remark) => problemInWords(remark)) }),
    ),
  );
};
