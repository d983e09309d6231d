import type { Page } from 'playwright-core';

/** What came of one tap on a shape of a card. */
export interface Tapped {
  /** Whether the shape showed its new state in the very next picture. */
  readonly isPainted: boolean;
  /** Whether the answer was still behind in that picture. */
  readonly isBehind: boolean;
  readonly paintMs: number;
  /** Until the answer had caught up. */
  readonly answerMs: number;
}

/** Describes a card of 23 speeds and taps it through: the slower half out, each of the faster ones on to *hangs*. */
export const tapThrough = async (page: Page, base: string): Promise<readonly Tapped[]> => {
  await page.goto(`${base}/cards/describe`);
  await page.getByLabel('Speeds', { exact: true }).fill('8 to 30 by 1 mm/s');
  await page.getByRole('button', { name: 'Read it' }).click();
  await page.waitForSelector('[data-cell]');
  return page.evaluate(async () => {
    const turn = (): Promise<void> =>
      new Promise((resolve) => {
        requestAnimationFrame(() => setTimeout(resolve, 0));
      });
    const isBusy = (): boolean =>
      document.querySelector('.answer-sentence[aria-busy="true"]') !== null;
    const tapped: Tapped[] = [];
    for (const [i, cell] of [...document.querySelectorAll<HTMLElement>('[data-cell]')].entries()) {
      for (let n = 0; n < (i > 12 ? 2 : 1); n += 1) {
        const before = cell.dataset['state'];
        const from = performance.now();
        cell.click();
        await turn();
        const paintMs = performance.now() - from;
        const isPainted = cell.dataset['state'] !== before;
        const isBehind = isBusy();
        while (isBusy()) await turn();
        tapped.push({ isPainted, isBehind, paintMs, answerMs: performance.now() - from });
      }
    }
    return tapped;
  });
};
