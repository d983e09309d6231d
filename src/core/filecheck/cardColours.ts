import type { Card } from '../card/card.ts';
import { cardDrawing } from '../card/cardDrawing.ts';
import { indexColours } from '../card/indexColours.ts';
import type { Setting } from '../machine/setting.ts';

/** The colours of a card's type-in list, as drawings name them. */
export interface CardColours {
  /** What is typed for a colour; undefined where the list does not have it. */
  readonly settingFor: (colour: string | undefined) => Setting | undefined;
  readonly isOf: (rung: string, colour: string) => boolean;
  readonly listed: (rung: string) => string;
}

/** Each layer's colour in full, as SVG has it, and as DXF's index has it (`colour 12`). */
export const coloursOf = (card: Card): CardColours => {
  const { layers } = cardDrawing(card);
  const indices = indexColours(layers.map(({ colour }) => colour));
  const names = layers.map(({ colour }, i) => [colour, `colour ${String(indices[i] ?? 7)}`]);
  const typed = new Map<string, Setting>();
  layers.forEach(({ setting }, i) => {
    for (const name of names[i] ?? []) if (setting !== undefined) typed.set(name, setting);
  });
  const at = (rung: string): readonly string[] =>
    names[layers.findIndex((layer) => layer.rung === rung)] ?? [];
  return {
    settingFor: (colour) => typed.get(colour?.toLowerCase() ?? ''),
    isOf: (rung, colour) => at(rung).includes(colour.toLowerCase()),
    listed: (rung) => at(rung)[0] ?? '',
  };
};
