import type { Point } from '../path/point.ts';
import { closed, type Polyline } from '../path/polyline.ts';
import type { Card, Cell, Place } from './card.ts';
import { cellLines } from './cellLines.ts';
import {
  depthMm,
  codeLettering,
  hintLettering,
  linePitchMm,
  riseMm,
  wordLettering,
} from './lettering.ts';
import { textWidthMm, writeText, type Lettering } from './letters.ts';
import { wordsGapMm } from './cardMeasures.ts';
import { hasCornerPower } from './settingWords.ts';
import { notchLines } from './notches.ts';
import { shapeBoxMm, shapeOutline } from './testShapes.ts';

/** What a line on the card belongs to. */
export type PartOf =
  | { readonly what: 'cell' | 'words'; readonly cell: string }
  | {
      readonly what:
        'code' | 'notch' | 'write-in' | 'hint' | 'whole' | 'window' | 'outline' | 'timed';
    };

/** Lines that belong together, cut one after the other. */
export interface DrawnPart {
  readonly of: PartOf;
  readonly polylines: readonly Polyline[];
}

/** The lines of a card by what cuts them, before anything is said of layers and colours. */
export interface CardParts {
  readonly marks: readonly DrawnPart[];
  /** The shapes of each rung, in the order of the rungs. */
  readonly rungs: readonly (readonly DrawnPart[])[];
  readonly window: readonly DrawnPart[];
  readonly outline: readonly DrawnPart[];
}

/** `before`: with the words that a corner power had once, which no line of the card explained. */
export type DrawnAs = 'now' | 'before';

/** All lines of a card: what a picture on a screen needs, and what its layers are made of. */
export const cardParts = (card: Card, drawnAs: DrawnAs = 'now'): CardParts => ({
  marks: marksOf(card, drawnAs),
  rungs: card.rungs.map(({ letter }) =>
    card.cells.filter((cell) => cell.rung === letter).map((cell) => shapePart(card, cell)),
  ),
  window: windowOf(card),
  outline: outlineOf(card),
});

const shapePart = (card: Card, cell: Cell): DrawnPart => ({
  of: { what: 'cell', cell: cell.id },
  polylines: [shapeOutline(card.shape, card.sizeMm, [cell.xMm, cell.yMm])],
});

/** Marks in the order of a hand that writes a page: the code, the notches, the field, then each cell's words. */
const marksOf = (card: Card, drawnAs: DrawnAs): readonly DrawnPart[] => [
  ...codeOf(card),
  { of: { what: 'notch' }, polylines: Object.values(notchLines(card)).flat() },
  ...writeInOf(card.places.writeIn),
  ...(drawnAs === 'now' ? cornersHint(card) : []),
  ...patchHints(card),
  ...card.cells.map((cell) => wordsOf(card, cell, drawnAs)),
];

const wordsOf = (card: Card, cell: Cell, drawnAs: DrawnAs): DrawnPart => {
  const setting = card.rungs.find((rung) => rung.letter === cell.rung)?.setting;
  const bottom = cell.yMm - shapeBoxMm(card.shape, card.sizeMm).heightMm / 2;
  const lines =
    setting === undefined
      ? [cell.id]
      : cellLines(setting, cell.id, drawnAs === 'now' ? undefined : drawnAs);
  return {
    of: { what: 'words', cell: cell.id },
    polylines: wordsBelow(lines, [cell.xMm, bottom]),
  };
};

/** The words that stand below a shape, given the middle of its lower edge. */
export const wordsBelow = (lines: readonly string[], [xMm, bottomMm]: Point): readonly Polyline[] =>
  lines.flatMap((line, i) => {
    const fromTop = wordsGapMm + riseMm(wordLettering) + i * linePitchMm(wordLettering);
    return centred(line, xMm, bottomMm - fromTop, wordLettering);
  });

const centred = (
  text: string,
  xMm: number,
  yMm: number,
  lettering: Lettering,
): readonly Polyline[] => writeText(text, [xMm - textWidthMm(text, lettering) / 2, yMm], lettering);

const codeOf = (card: Card): readonly DrawnPart[] => {
  const place = card.places.code;
  if (place === undefined) return [];
  return [
    {
      of: { what: 'code' },
      polylines: writeText(card.code, [place.xMm, place.yMm], codeLettering),
    },
  ];
};

/** A field with room for what a pencil notes at the machine. */
const writeInOf = (place: Place | undefined): readonly DrawnPart[] => {
  if (place === undefined) return [];
  const hints = ['BATCH', 'AIR', 'WATER'];
  const share = place.widthMm / hints.length;
  const top = place.yMm + place.heightMm;
  const dividers = hints.slice(1).map((_, i): Polyline => {
    const x = place.xMm + (i + 1) * share;
    return [
      [x, place.yMm],
      [x, top],
    ];
  });
  return [
    { of: { what: 'write-in' }, polylines: [rectangle(place), ...dividers] },
    {
      of: { what: 'hint' },
      polylines: hints.flatMap((hint, i) =>
        writeText(
          hint,
          [place.xMm + i * share + 0.6, top - 0.8 - hintLettering.capMm],
          hintLettering,
        ),
      ),
    },
  ];
};

/** What `c20%` is short for, below the field, where a cell of the card has it. */
const cornersHint = ({ rungs, places: { writeIn } }: Card): readonly DrawnPart[] =>
  writeIn === undefined || !rungs.some(({ setting }) => hasCornerPower(setting))
    ? []
    : [
        {
          of: { what: 'hint' },
          polylines: writeText(
            'C: CORNER POWER',
            [writeIn.xMm, writeIn.yMm - 0.4 - riseMm(hintLettering)],
            hintLettering,
          ),
        },
      ];

/** What the window and the patch are for, above them; and the corners of the patch, whose middle stays untouched. */
const patchHints = (card: Card): readonly DrawnPart[] => {
  const { window, whole } = card.places;
  const above = (place: Place | undefined, text: string): readonly Polyline[] =>
    place === undefined
      ? []
      : centred(
          text,
          place.xMm + place.widthMm / 2,
          place.yMm + place.heightMm + depthMm(hintLettering) + 0.4,
          hintLettering,
        );
  const hints = [
    ...(card.trusted === undefined ? [] : above(window, 'POKE')),
    ...above(whole, 'LEAVE'),
  ];
  return [
    ...(hints.length === 0 ? [] : [{ of: { what: 'hint' as const }, polylines: hints }]),
    ...(whole === undefined
      ? []
      : [{ of: { what: 'whole' as const }, polylines: cornersOf(whole) }]),
  ];
};

const windowOf = (card: Card): readonly DrawnPart[] =>
  card.places.window === undefined || card.trusted === undefined
    ? []
    : [{ of: { what: 'window' }, polylines: [rectangle(card.places.window)] }];

const outlineOf = (card: Card): readonly DrawnPart[] =>
  card.outline === 'none'
    ? []
    : [
        {
          of: { what: 'outline' },
          polylines: [
            rectangle({ xMm: 0, yMm: 0, widthMm: card.widthMm, heightMm: card.heightMm }),
          ],
        },
      ];

const rectangle = ({ xMm, yMm, widthMm, heightMm }: Place): Polyline =>
  closed([
    [xMm, yMm],
    [xMm + widthMm, yMm],
    [xMm + widthMm, yMm + heightMm],
    [xMm, yMm + heightMm],
  ]);

const cornersOf = ({ xMm, yMm, widthMm, heightMm }: Place): readonly Polyline[] => {
  const leg = Math.min(widthMm, heightMm) / 4;
  const [right, top] = [xMm + widthMm, yMm + heightMm];
  return [
    [
      [xMm + leg, yMm],
      [xMm, yMm],
      [xMm, yMm + leg],
    ],
    [
      [right - leg, yMm],
      [right, yMm],
      [right, yMm + leg],
    ],
    [
      [xMm + leg, top],
      [xMm, top],
      [xMm, top - leg],
    ],
    [
      [right - leg, top],
      [right, top],
      [right, top - leg],
    ],
  ];
};
