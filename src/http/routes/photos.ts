import type { FastifyInstance } from 'fastify';
import { gradeKeptPhotos } from '../../app/card/gradeKeptPhotos.ts';
import { keepPhoto } from '../../app/card/keepPhoto.ts';
import { listPhotos, readKeptPhoto, removePhoto } from '../../app/card/keptPhotos.ts';
import type { Pictures } from '../../app/ports/pictures.ts';
import { photoLimits } from '../../core/photo/photoLimits.ts';
import { andThen, done, refused } from '../../core/problem.ts';
import { problemInWords } from '../../words/words.ts';
import { photoApi } from '../../wire/photo.ts';
import { on } from '../on.ts';
import type { ServedPorts } from '../servedPorts.ts';

/** Photographs kept with cards, and read. */
export const photoRoutes = (app: FastifyInstance, ports: ServedPorts, pictures: Pictures): void => {
  app.addContentTypeParser(/^image\//, { parseAs: 'buffer' }, (_request, body, parsed) =>
    parsed(null, body),
  );
  on(app, photoApi.listPhotos, async ({ params: { id, code } }) =>
    done({ photos: await listPhotos(ports, { studyId: id, code }) }),
  );
  on(
    app,
    photoApi.keepPhoto,
    async ({ params: { id, code, side }, request: { body } }) =>
      body instanceof Uint8Array
        ? andThen(
            await keepPhoto({ ...ports, pictures }, { studyId: id, code, side, bytes: body }),
            (photo) => done({ photo }),
          )
        : refused('photo-not-a-picture', { file: side }),
    { bodyLimit: photoLimits.bytes },
  );
  on(app, photoApi.cardPhoto, async ({ params: { id, code, side }, reply }) => {
    const photo = await readKeptPhoto(ports, { studyId: id, code }, side);
    if (!photo.ok) return photo;
    reply.type('image/jpeg').send(Buffer.from(photo.value.jpeg));
    return done(undefined);
  });
  on(app, photoApi.removePhoto, async ({ params: { id, code, side } }) =>
    andThen(await removePhoto(ports, { studyId: id, code }, side), () => done({ removed: true })),
  );
  on(app, photoApi.gradeCard, async ({ params: { id, code }, gone }) =>
    andThen(
      await gradeKeptPhotos({ ...ports.until(gone), pictures }, { studyId: id, code }),
      ({ remarks, ...graded }) =>
        done({ ...graded, remarks: remarks.map((remark) => problemInWords(remark)) }),
    ),
  );
};
