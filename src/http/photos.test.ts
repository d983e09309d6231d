import sharp from 'sharp';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { asJpeg } from '../../bench/photo/asJpeg.ts';
import { renderPhoto } from '../../bench/photo/renderPhoto.ts';
import { drawScene } from '../../bench/photo/scene.ts';
import { sampleCard, sampleEntry, sampleStudy } from '../../test/samples/studies.ts';
import { testServer, type TestServer } from '../../test/samples/server.ts';
import { done } from '../core/problem.ts';
import { photoLimits } from '../core/photo/photoLimits.ts';
import { seededRandom } from '../num/seededRandom.ts';
import { firstCard } from '../web/state/firstCard.ts';
import { api } from '../wire/api.ts';
import { photoApi } from '../wire/photo.ts';
import { addressOf } from '../wire/route.ts';

let server: TestServer;
const card = firstCard('K7QX');
const [id, code] = ['s1', card.code];
const front = { id, code, side: 'front' };

beforeEach(async () => {
  server = await testServer();
  await server.ask(api.startStudy, {
    body: { id, stock: { material: 'plywood', nominalThicknessMm: 3, thicknessReadingsMm: [] } },
  });
  await server.ask(api.addCard, { params: { id }, body: { card } });
});
afterEach(() => server.close());

const put = (bytes: Buffer, type = 'image/jpeg', params = front) =>
  server.app.inject({
    method: 'PUT',
    url: addressOf(photoApi.keepPhoto, params),
    headers: { host: '127.0.0.1:4870', 'content-type': type },
    payload: bytes,
  });
const kept = async (params = front): Promise<Buffer> => {
  const reply = await server.send(photoApi.cardPhoto, { params });
  expect([reply.statusCode, reply.headers['content-type']]).toEqual([200, 'image/jpeg']);
  return reply.rawPayload;
};
const listed = async () =>
  (await server.ask(photoApi.listPhotos, { params: { id, code } })).photos.map(({ side }) => side);

/** Taken sideways in the middle of a town, by a camera that has a number. */
const withPosition = (): Promise<Buffer> =>
  sharp({ create: { width: 3000, height: 1500, channels: 3, background: '#a86' } })
    .withExif({
      IFD0: { Make: 'Invented', Software: 'Seven' },
      IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '51/1 30/1 0/1', GPSLongitudeRef: 'W' },
    })
    .withMetadata({ orientation: 6 })
    .jpeg()
    .toBuffer();

describe('a photograph kept with a card', () => {
  it('is kept upright, made smaller, and without where and with what it was taken', async () => {
    const taken = await withPosition();
    const before = await sharp(taken).metadata();
    expect(before.exif).toBeDefined();
    expect((await put(taken)).json()).toMatchObject({
      photo: { side: 'front', widthPx: 1000, heightPx: 2000 },
    });
    const bytes = await kept();
    const { width, height, format, exif, xmp, iptc, icc, orientation } =
      await sharp(bytes).metadata();
    expect([width, height, format]).toEqual([1000, photoLimits.longestPx, 'jpeg']);
    expect([exif, xmp, iptc, icc, orientation]).toEqual(Array(5).fill(undefined));
    for (const trace of ['Exif', 'GPS', 'Invented', 'Seven'])
      expect(bytes.includes(trace)).toBe(false);
  });

  it('takes the place of the one before, a front beside a back, and goes when asked', async () => {
    const [one, other] = await Promise.all(
      ['#222', '#ddd'].map((background) =>
        sharp({ create: { width: 400, height: 300, channels: 3, background } })
          .png()
          .toBuffer(),
      ),
    );
    if (one === undefined || other === undefined) throw new Error('no picture');
    await put(one, 'image/png');
    const first = await kept();
    await put(other, 'image/png');
    expect((await kept()).equals(first)).toBe(false);
    await put(one, 'image/png', { ...front, side: 'back' });
    expect(await listed()).toEqual(['front', 'back']);
    await server.ask(photoApi.removePhoto, { params: front });
    expect(await listed()).toEqual(['back']);
    expect(await server.refusal(photoApi.cardPhoto, { params: front })).toEqual([
      404,
      'photo-not-kept',
    ]);
  });

  it('goes with its card, and comes back with its sheet', async () => {
    await put(await withPosition());
    const bytes = await kept();
    await server.ask(api.removeStudy, { params: { id } });
    await server.ask(api.putBackStudy, { params: { id } });
    expect((await kept()).equals(bytes)).toBe(true);
    await server.ask(api.removeCard, { params: { id, code } });
    await server.ask(api.addCard, { params: { id }, body: { card } });
    expect(await listed()).toEqual([]);
  });

  it('goes with its sheet once that can come back no more', async () => {
    await put(await withPosition());
    await server.ask(api.removeStudy, { params: { id } });
    const photos = () =>
      server.ports.store.read((session) => session.photosOf({ studyId: id, code }));
    expect(await photos()).toHaveLength(1);
    await server.ports.store.change(async (session) => {
      for (let i = 0; i < 20; i += 1)
        await session.keepRemoved({
          study: sampleStudy(`later-${String(i)}`, { cards: [sampleCard()] }),
          removedAt: '2099-01-01T00:00:00.000Z',
        });
      return done(undefined);
    });
    expect(await photos()).toEqual([]);
  });

  it('is refused where it is none, too large or cut off, and nothing is kept', async () => {
    const whole = await withPosition();
    const huge = Buffer.from(whole);
    const frame = huge.indexOf(Buffer.from([0xff, 0xc0]));
    huge.writeUInt16BE(60_000, frame + 5);
    huge.writeUInt16BE(60_000, frame + 7);
    const svg = Buffer.from('<svg xmlns="http://www.w3.org/2000/svg" width="900" height="900"/>');
    for (const [bytes, type, said] of [
      [svg, 'image/png', 'photo-not-a-picture'],
      [huge, 'image/jpeg', 'photo-too-big'],
      [whole.subarray(0, whole.length / 2), 'image/jpeg', 'photo-broken'],
      [Buffer.from('{}'), 'application/json', 'photo-not-a-picture'],
    ] as const)
      expect((await put(bytes, type)).json()).toMatchObject({ error: { code: said } });
    expect((await put(whole, 'image/jpeg', { ...front, code: 'ZZZZ' })).statusCode).toBe(404);
    expect(await listed()).toEqual([]);
    const elsewhere = await server.app.inject({
      method: 'POST',
      url: '/api/studies',
      headers: { host: '127.0.0.1:4870', 'content-type': 'image/png' },
      payload: whole,
    });
    expect(elsewhere.statusCode).toBe(400);
  });
});

describe('a photograph kept with a kept setting', () => {
  const at = (subject: string, entry = 'b1') => ({ id: entry, subject });
  const putOf = (bytes: Buffer, subject: string, entry = 'b1', type = 'image/jpeg') =>
    server.app.inject({
      method: 'PUT',
      url: addressOf(photoApi.keepSettingPhoto, at(subject, entry)),
      headers: { host: '127.0.0.1:4870', 'content-type': type },
      payload: bytes,
    });
  const subjects = async () =>
    (await server.ask(photoApi.listSettingPhotos, { params: { id: 'b1' } })).photos.map(
      ({ subject }) => subject,
    );
  beforeEach(async () => {
    await server.ports.store.change(async (session) => {
      await session.insertEntry(sampleEntry('b1', { code: 'BK42' }));
      return done(undefined);
    });
  });

  it('is kept as a card’s is: upright, made smaller, without where and with what it was taken', async () => {
    expect((await putOf(await withPosition(), 'engrave')).json()).toMatchObject({
      photo: { subject: 'engrave', widthPx: 1000, heightPx: 2000 },
    });
    // By the code on its label, too.
    await putOf(await withPosition(), 'cut', 'BK42');
    expect(await subjects()).toEqual(['cut', 'engrave']);
    const reply = await server.send(photoApi.settingPhoto, { params: at('engrave') });
    expect([reply.statusCode, reply.headers['content-type']]).toEqual([200, 'image/jpeg']);
    const { width, height, format, exif } = await sharp(reply.rawPayload).metadata();
    expect([width, height, format, exif]).toEqual([1000, photoLimits.longestPx, 'jpeg', undefined]);
    for (const trace of ['Exif', 'GPS', 'Invented', 'Seven'])
      expect(reply.rawPayload.includes(trace)).toBe(false);
  });

  it('goes when asked, and with its setting', async () => {
    await putOf(await withPosition(), 'cut');
    await putOf(await withPosition(), 'tape');
    await server.ask(photoApi.removeSettingPhoto, { params: at('tape') });
    expect(await subjects()).toEqual(['cut']);
    expect(await server.refusal(photoApi.settingPhoto, { params: at('tape') })).toEqual([
      404,
      'setting-photo-not-kept',
    ]);
    await server.ask(api.removeEntry, { params: { id: 'b1' } });
    const left = await server.ports.store.read((session) => session.settingPhotosOf('b1'));
    expect(left).toEqual([]);
  });

  it('is refused where it is none, of nothing that is photographed, or of no kept setting', async () => {
    const whole = await withPosition();
    const svg = Buffer.from('<svg xmlns="http://www.w3.org/2000/svg" width="900" height="900"/>');
    for (const [bytes, said] of [
      [svg, 'photo-not-a-picture'],
      [whole.subarray(0, whole.length / 2), 'photo-broken'],
    ] as const)
      expect((await putOf(bytes, 'cut')).json()).toMatchObject({ error: { code: said } });
    expect((await putOf(whole, 'lamp')).statusCode).toBe(400);
    expect((await putOf(whole, 'cut', 'nowhere')).json()).toMatchObject({
      error: { code: 'entry-not-found' },
    });
    expect(await subjects()).toEqual([]);
  });
});

describe('grading over HTTP', () => {
  it('says of each shape what was put into the picture, and notes nothing as read', async () => {
    const scene = drawScene(card, 'fair', seededRandom(4));
    for (const side of ['front', 'back'] as const)
      await put(await asJpeg(renderPhoto(scene, side), 90), 'image/jpeg', { ...front, side });
    const graded = await server.ask(photoApi.gradeCard, { params: { id, code } });
    expect(graded.found).toBe(true);
    expect(Object.fromEntries(graded.cells.map(({ cell, grade }) => [cell, grade]))).toEqual(
      Object.fromEntries(scene.grades),
    );
    const { study } = await server.ask(api.getStudy, { params: { id } });
    expect(study.events).toEqual([]);
  });

  it('asks for a photograph where there is none of the front', async () => {
    expect(await server.refusal(photoApi.gradeCard, { params: { id, code } })).toEqual([
      404,
      'photo-not-kept',
    ]);
  });
});
