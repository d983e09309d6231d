import { useState } from 'react';
import { useLocation } from 'wouter';
import type { Card } from '../../../core/card/card.ts';
import type { PhotoRead } from '../../../core/photo/readPhoto.ts';
import { progress } from '../../../core/reading/progress.ts';
import { photoText as words } from '../../../words/texts.ts';
import { Action, ActionLink } from '../../parts/action/Action.tsx';
import { Choice } from '../../parts/choice/Choice.tsx';
import { Notice } from '../../parts/notice/Notice.tsx';
import type { Reading } from '../../parts/reader/useReading.ts';
import { pageAt, pages } from '../../state/pages.ts';
import {
  cellsToUse,
  corrected,
  gradesToSay,
  needsLook,
  type CellToUse,
  type Corrections,
} from './cellsToUse.ts';
import { PhotoBoard } from './PhotoBoard.tsx';

export interface PhotoResultProps {
  readonly card: Card;
  readonly read: PhotoRead;
  readonly flat: { readonly front: ImageData; readonly back?: ImageData };
  readonly reading: Reading;
  readonly studyId: string;
}

const sides = (['front', 'back'] as const).map((value) => ({ value, label: words.sides[value] }));

/** What was read, on the flattened card, to be corrected and then used. */
export const PhotoResult = ({ card, read, flat, reading, studyId }: PhotoResultProps) => {
  const [corrections, setCorrections] = useState<Corrections>(new Map());
  const [side, setSide] = useState<'front' | 'back'>('front');
  const [, goTo] = useLocation();
  const cells = cellsToUse(read.cells, corrections);
  const left = cells.filter(({ grade }) => grade === undefined).length;
  const before = progress(reading.cells).read;
  const toCard = pageAt(pages.card, { id: studyId, code: card.code });
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
      <div className="actions">
        <Action
          kind="strong"
          isDisabled={left === cells.length}
          onPress={() => {
            reading.gradeAll(gradesToSay(cells));
            goTo(toCard);
          }}
        >
          {left === 0 ? words.use : words.useSome(left)}
        </Action>
        <ActionLink href={toCard}>{words.byHand}</ActionLink>
      </div>
    </>
  );
};

const Counts = ({ cells }: { readonly cells: readonly CellToUse[] }) => {
  const counts = { out: 0, hangs: 0, stays: 0 };
  for (const { grade } of cells) if (grade !== undefined) counts[grade] += 1;
  const cantTell = cells.filter(({ grade }) => grade === undefined).length;
  const unsure = cells.filter(needsLook).length - cantTell;
  return (
    <p role="status">
      {words.counts(counts)}
      {unsure + cantTell === 0 ? '.' : `; ${words.toLookAt(unsure, cantTell)}. ${words.lookAtThem}`}
    </p>
  );
};
