import type { Page } from 'playwright-core';

/** Sets all text so many times larger than usual, as a reader's own setting of the browser does. */
export const enlargeText = (page: Page, times: number): Promise<void> =>
  page.evaluate((factor) => {
    const { style } = document.documentElement;
    style.fontSize = '';
    const usual = Number.parseFloat(getComputedStyle(document.documentElement).fontSize);
    style.fontSize = `${String(usual * factor)}px`;
  }, times);

/** Whatever of the screen cannot be seen or reached: text beyond its box or beyond the page. Each in a few words. */
export const cutOff = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const found: string[] = [];
    const wide = document.documentElement.clientWidth;
    const name = (element: Element): string =>
      `${element.tagName.toLowerCase()}.${element.getAttribute('class') ?? ''} “${element.textContent.trim().slice(0, 40)}”`;
    /** Only read out, or in a box that scrolls: nothing is lost. */
    const isElsewhere = (from: Element): boolean => {
      for (let at: Element | null = from; at !== null; at = at.parentElement) {
        const style = getComputedStyle(at);
        if (style.clipPath !== 'none' || style.visibility === 'hidden') return true;
        if (/auto|scroll/.test(style.overflowX) && at !== document.documentElement) return true;
        if (at.matches('.unseen, .shell-skip, [aria-hidden="true"]')) return true;
      }
      return false;
    };
    const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = texts.nextNode(); node !== null; node = texts.nextNode()) {
      const parent = node.parentElement;
      if ((node.textContent ?? '').trim() === '' || parent === null || isElsewhere(parent))
        continue;
      const range = document.createRange();
      range.selectNodeContents(node);
      const boxes = [...range.getClientRects()].filter(({ width }) => width > 0);
      if (boxes.some(({ left, right }) => left < -1 || right > wide + 1))
        found.push(`beyond the page: ${name(parent)}`);
      // A box that hides what does not fit in it.
      for (let at: Element | null = parent; at !== null; at = at.parentElement) {
        const style = getComputedStyle(at);
        if (!/hidden|clip/.test(`${style.overflowX} ${style.overflowY}`)) continue;
        const box = at.getBoundingClientRect();
        if (
          boxes.some(
            ({ left, right, top, bottom }) =>
              left < box.left - 1 ||
              right > box.right + 1 ||
              top < box.top - 2 ||
              bottom > box.bottom + 2,
          )
        )
          found.push(`cut by its box: ${name(parent)}`);
      }
    }
    for (const box of document.querySelectorAll('button, a.action, .choice-option')) {
      if (box.scrollWidth > box.clientWidth + 1 && !isElsewhere(box))
        found.push(`wider than its box: ${name(box)}`);
    }
    return [...new Set(found)];
  });
