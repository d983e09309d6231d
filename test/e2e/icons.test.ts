import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Browser } from 'playwright-core';
import { launchBrowser } from '../../bench/launchBrowser.ts';
import { compareIcons, icons, spread } from '../../bench/paths/compareIcons.ts';

let browser: Browser | undefined;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser?.close());

describe('lengths and boxes of paths that others drew', () => {
  it('are what a browser says they are (every 20th of bootstrap-icons 1.13.2)', async () => {
    const drawings = icons(20);
    expect(drawings.length).toBeGreaterThan(100);
    const page = await browser?.newPage();
    if (page === undefined) throw new Error('The browser opens with the first test.');
    const { paths, missing, sameCubics, asItIs } = await compareIcons(page, drawings);
    expect(paths).toBeGreaterThan(drawings.length);
    expect(missing).toEqual([]);
    expect(spread(sameCubics, 'length').worst).toBeLessThanOrEqual(1e-4);
    expect(spread(sameCubics, 'box').worst).toBeLessThanOrEqual(1e-4);
    // Arcs that the browser draws as cubics, in single precision.
    expect(spread(asItIs, 'length').worst).toBeLessThanOrEqual(5e-4);
    expect(spread(asItIs, 'box').worst).toBeLessThanOrEqual(5e-4);
  });
});
