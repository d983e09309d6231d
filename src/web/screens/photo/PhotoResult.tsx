import { useState } from 'react';
import type { Card } from '../../../core/card/card.ts';
import type { PhotoRead } from '../../../core/photo/readPhoto.ts';
import { progress } from '../../../core/reading/progress.ts';
import { photoText as words } from '../../../words/texts.ts';
import { Choice } from '../../parts/choice/Choice.tsx';
import { Notice } from '../../parts/notice/Notice.tsx';
import type { Reading } from '../../parts/reader/useReading.ts';
import { Said } from '../../parts/said/Said.tsx';
import type { PhotoQuestion } from '../../worker/photoQuestion.ts';
import {
  cellsToUse,
  corrected,
  gradesToSay,
  needsLook,
  type CellToUse,
  type Corrections,
} from './cellsToUse.ts';
import { PhotoBoard } from './PhotoBoard.tsx';
import { UseThem } from './UseThem.tsx';

export interface PhotoResultProps {
  readonly card: Card;
  readonly read: PhotoRead;
  readonly flat: { readonly front: ImageData; readonly back?: ImageData };
  readonly photos: Pick<PhotoQuestion, 'front' | 'back'>;
  readonly reading: Reading;
  readonly studyId: string;
}

const sides = (['front', 'back'] as const).map((value) => ({ value, label: words.sides[value] }));

/** What was read, on the flattened card, to be corrected and then used. */
export const PhotoResult = ({ card, read, flat, photos, reading, studyId }: PhotoResultProps) => {
  const [corrections, setCorrections] = useState<Corrections>(new Map());
  const [side, setSide] = useState<'front' | 'back'>('front');
  const cells = cellsToUse(read.cells, corrections);
  const before = progress(reading.cells).read;
  return (
    <>
      {flat.back === undefined ? null : (
        <Choice label={words.side} hideLabel options={sides} value={side} onChange={setSide} />
      )}
      <div className="photo-bench bench">
        <p>{words.check}</p>
        <PhotoBoard
          card={card}
          shown={side === 'back' ? (flat.back ?? flat.front) : flat.front}
          cells={cells}
          onTap={(cell) => setCorrections(corrected(cells, corrections, cell))}
        />
        <Counts cells={cells} />
      </div>
      {before === 0 ? null : (
        <Notice tone="care">
          <p>{words.replaces(before)}</p>
        </Notice>
      )}
      <UseThem
        cells={cells}
        card={{ id: studyId, code: card.code }}
        photos={photos}
        onUse={() => reading.gradeAll(gradesToSay(cells))}
      />
    </>
  );
};

const Counts = ({ cells }: { readonly cells: readonly CellToUse[] }) => {
  const counts = { out: 0, hangs: 0, stays: 0 };
  for (const { grade } of cells) if (grade !== undefined) counts[grade] += 1;
  const cantTell = cells.filter(({ grade }) => grade === undefined).length;
  const unsure = cells.filter(needsLook).length - cantTell;
  return (
    <Said what="answer">
      {words.counts(counts)}
      {unsure + cantTell === 0 ? '.' : `; ${words.toLookAt(unsure, cantTell)}. ${words.lookAtThem}`}
    </Said>
  );
};
