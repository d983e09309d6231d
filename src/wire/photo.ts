import { z } from 'zod';
import { grades } from '../core/reading/grade.ts';
import { settingSubjects } from '../core/marking/settingSubjects.ts';
import { photoSides } from '../core/photo/photoSide.ts';
import { isoTime } from '../formats/saved/bounds.ts';
import { photoAddresses } from './laterAddresses.ts';
import { byEntry } from './book.ts';
import { byCard } from './card.ts';
import { saidInFull } from './problem.ts';
import { route } from './route.ts';

const side = z.enum(photoSides);
const bySide = z.strictObject({ ...byCard.shape, side });

const subject = z.enum(settingSubjects);
const bySubject = z.strictObject({ ...byEntry.shape, subject });
const pictures = ['image/jpeg', 'image/png', 'image/webp', 'image/avif'];

const settingPhotoKept = z.strictObject({
  subject,
  keptAt: isoTime,
  widthPx: z.number().int(),
  heightPx: z.number().int(),
});

const photoKept = z.strictObject({
  side,
  keptAt: isoTime,
  widthPx: z.number().int(),
  heightPx: z.number().int(),
});

/** Photographs of cards, and what they say. */
export const photoApi = {
  listPhotos: route({
    ...photoAddresses.listPhotos,
    summary: 'What is known of the photographs kept with a card',
    params: byCard,
    reply: z.strictObject({ photos: z.array(photoKept) }),
  }),
  keepPhoto: route({
    ...photoAddresses.keepPhoto,
    summary:
      'Keep a photograph of a card’s front or back, made smaller and without where it was taken',
    params: bySide,
    takes: pictures,
    reply: z.strictObject({ photo: photoKept }),
  }),
  cardPhoto: route({
    ...photoAddresses.cardPhoto,
    summary: 'The photograph, as a JPEG',
    params: bySide,
  }),
  removePhoto: route({
    ...photoAddresses.removePhoto,
    summary: 'Take a photograph away; what was read from it stays',
    params: bySide,
    reply: z.strictObject({ removed: z.boolean() }),
  }),
  listSettingPhotos: route({
    ...photoAddresses.listSettingPhotos,
    summary: 'What is known of the photographs kept with a kept setting and the marks beside it',
    params: byEntry,
    reply: z.strictObject({ photos: z.array(settingPhotoKept) }),
  }),
  keepSettingPhoto: route({
    ...photoAddresses.keepSettingPhoto,
    summary:
      'Keep a photograph of what a kept setting cuts, or of a mark beside it, made smaller and without where it was taken',
    params: bySubject,
    takes: pictures,
    reply: z.strictObject({ photo: settingPhotoKept }),
  }),
  settingPhoto: route({
    ...photoAddresses.settingPhoto,
    summary: 'The photograph, as a JPEG',
    params: bySubject,
  }),
  removeSettingPhoto: route({
    ...photoAddresses.removeSettingPhoto,
    summary: 'Take a photograph of a kept setting away',
    params: bySubject,
    reply: z.strictObject({ removed: z.boolean() }),
  }),
  gradeCard: route({
    ...photoAddresses.gradeCard,
    summary: 'What the photographs kept with a card say of its shapes; nothing is noted as read',
    params: byCard,
    reply: z.strictObject({
      version: z.literal(1),
      found: z.boolean(),
      cells: z.array(
        z.strictObject({
          cell: z.string(),
          grade: z.enum([...grades, 'cant-tell']),
          sure: z.number(),
        }),
      ),
      remarks: z.array(saidInFull),
    }),
  }),
};
