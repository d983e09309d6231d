import { designKerfCard, type KerfCardAsked } from '../../app/card/designKerfCard.ts';
import { actsOfKerfCard } from '../../core/kerf/actsOfKerfCard.ts';
import { kerfCardDrawing, type KerfCard } from '../../core/kerf/kerfCard.ts';
import { andThen, done } from '../../core/problem.ts';
import { glowsOn } from '../../core/stock/glowsOn.ts';
import { parseKerfCardRequest } from '../../formats/kerfCardRequestFile.ts';
import type { PageBeside } from '../../words/shape/pageBeside.ts';
import { kerfSheetText as words } from '../../words/texts.ts';
import { problemInWords } from '../../words/words.ts';
import type { RequestKind } from './toFile.ts';

/** A comb card or a slot card. */
export const kerfCardFiles: RequestKind<KerfCardAsked> = {
  read: parseKerfCardRequest,
  make: (asked) =>
    andThen(designKerfCard(asked), (card) =>
      done({
        name: words.file[card.sheet.kind],
        machine: asked.machine,
        page: () => kerfCardPage(card, glowsOn(asked.named.material)),
        told: () => toldOf(card),
      }),
    ),
};

const kerfCardPage = (card: KerfCard, glows: boolean): PageBeside => ({
  title: words.title(card),
  about: words.about(card),
  minded: words.piece(card),
  acts: actsOfKerfCard(card, glows),
  ...(card.ofMaterial === undefined ? {} : { ofMaterial: card.ofMaterial }),
  drawing: kerfCardDrawing(card),
  steps: words.steps(card),
  entries: [...words.entries(card), words.tryFirst],
  noteFields: words.noteFields(card),
  remarks: card.remarks,
});

const toldOf = (card: KerfCard): object => {
  const { sheet, setting, scoring, remarks } = card;
  return {
    card: sheet.kind,
    pieceMm: [sheet.widthMm, sheet.heightMm],
    ...(sheet.kind === 'comb'
      ? {
          combs: sheet.combs.map(({ label, direction, strips, nominalMm }) => ({
            place: label,
            direction,
            strips,
            nominalMm,
          })),
        }
      : { slots: sheet.slots.map(({ drawnMm }) => drawnMm) }),
    setting,
    scoring,
    steps: words.steps(card),
    remarks: remarks.map((remark) => problemInWords(remark)),
  };
};
