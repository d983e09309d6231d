import { designRamp, type RampWish, type Strip } from '../../app/card/designRamp.ts';
import { actsOfRamp } from '../../core/card/actsOfRamp.ts';
import { rampDrawing, type RampCard } from '../../core/card/rampCard.ts';
import { andThen, done } from '../../core/problem.ts';
import { parseRampRequest } from '../../formats/rampRequestFile.ts';
import type { PageBeside } from '../../words/shape/pageBeside.ts';
import { rampSheetText as words } from '../../words/texts.ts';
import type { RequestKind } from './toFile.ts';

/** A focus ramp. */
export const rampFiles: RequestKind<{ readonly strip: Strip; readonly wish: RampWish }> = {
  read: parseRampRequest,
  make: ({ strip, wish }) =>
    andThen(designRamp(strip, wish), (card) =>
      done({
        name: words.file,
        machine: wish.machine,
        page: () => rampPage(card),
        told: () => ({
          ramp: card.ramp,
          lines: card.lines.map(({ letter, setting, dose }) => ({ letter, ...setting, dose })),
          steps: words.steps(card.ramp),
        }),
      }),
    ),
};

const rampPage = (card: RampCard): PageBeside => {
  const { ramp, lines, ofMaterial } = card;
  const [first] = lines;
  return {
    title: words.title,
    about: words.about(ramp),
    minded: words.clearance(ramp),
    acts: actsOfRamp,
    ...(ofMaterial === undefined ? {} : { ofMaterial }),
    drawing: rampDrawing(card),
    steps: words.steps(ramp),
    entries: [
      ...(first === undefined ? [] : [words.marks(first)]),
      ...lines.map(words.line),
      words.tryFirst,
    ],
    noteFields: words.noteFields(lines.map(({ letter }) => letter)),
  };
};
