import type { SettingSubject } from '../../core/marking/settingSubjects.ts';
import type { Picture } from '../../core/photo/picture.ts';
import type { PhotoSide } from '../../core/photo/photoSide.ts';
import type { Outcome } from '../../core/problem.ts';

/** Opens and writes pictures. */
export interface Pictures {
  /** Upright, no larger than reading needs. `file`: its name, for the refusals. */
  readonly decode: (bytes: Uint8Array, file: string) => Promise<Outcome<Picture>>;
  /** A JPEG with nothing in it but the picture, of no more than so many bytes. */
  readonly toJpeg: (picture: Picture, mostBytes: number) => Promise<Uint8Array>;
}

/** What is known of a photograph that is kept. */
export interface PictureKept {
  /** ISO 8601, UTC. */
  readonly keptAt: string;
  readonly widthPx: number;
  readonly heightPx: number;
}

/** The same of one that is kept with a card. */
export interface PhotoKept extends PictureKept {
  readonly side: PhotoSide;
}

/** The same of one that is kept with a kept setting. */
export interface SettingPhotoKept extends PictureKept {
  readonly subject: SettingSubject;
}

/** That with the picture itself. */
export interface StoredSettingPhoto extends SettingPhotoKept {
  readonly jpeg: Uint8Array;
}

/** A photograph of a card with the picture itself. */
export interface StoredPhoto extends PhotoKept {
  readonly jpeg: Uint8Array;
}

/** Which card of which study. */
export interface CardAt {
  readonly studyId: string;
  readonly code: string;
}
