import type { Page } from 'playwright-core';

/** One drawn path: in px, y downwards. */
export interface PathMeasure {
  readonly length: number;
  readonly box: readonly [left: number, top: number, right: number, bottom: number];
}

/** What of the page's own objects is called. */
interface DrawnPath {
  readonly getTotalLength: () => number;
  readonly getBBox: () => { x: number; y: number; width: number; height: number };
}
interface Holder {
  innerHTML: string;
  readonly querySelectorAll: (selector: string) => Iterable<DrawnPath>;
}
declare const document: { readonly body: Holder };

/** Lengths and boxes of all paths of some drawings, by `getTotalLength` and `getBBox` (SVG 2, 4.6.4 and 9.6.1). */
export const browserMeasures = (
  page: Page,
  drawings: readonly string[],
): Promise<readonly (readonly PathMeasure[])[]> =>
  page.evaluate(
    (texts) =>
      texts.map((text) => {
        document.body.innerHTML = text;
        return [...document.body.querySelectorAll('path')].map((path) => {
          const { x, y, width, height } = path.getBBox();
          return { length: path.getTotalLength(), box: [x, y, x + width, y + height] as const };
        });
      }),
    [...drawings],
  );
