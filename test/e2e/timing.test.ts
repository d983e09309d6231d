import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { Card } from '../../src/core/card/card.ts';
import { cardTime } from '../../src/core/card/cardTime.ts';
import { undescribedMachine } from '../../src/core/machine/machine.ts';
import type { MotionValues } from '../../src/core/motion/motionValues.ts';
import { wholeJobTime } from '../../src/core/motion/jobTime.ts';
import { jobsToTime } from '../../src/core/motion/timedJobs.ts';
import { parseCardFile } from '../../src/formats/cardFile.ts';
import { axeFindings, desk, phone, picture } from './page.ts';
import { openWorkshop } from './workshop.ts';

/** The machine in this workshop, invented. The page is told it, or has to find it. */
const truth: MotionValues = {
  accelerationMmPerS2: 1100,
  corner: { rule: 'speed-jump', xMmPerS: 9, yMmPerS: 9 },
  travelSpeedMmPerS: 260,
  travelAccelerationMmPerS2: 1500,
  lineDelayS: 0.04,
  jobDelayS: 1.5,
};

/** A new sheet's card at the machine. */
const takeCard = async (page: Page, base: string): Promise<Card> => {
  await page.goto(`${base}/sheets/new`);
  await page.getByLabel('Material').fill('birch plywood');
  await page.getByRole('button', { name: 'Make a card for it' }).click();
  await page.getByText('The speed', { exact: true }).click();
  await page.getByRole('button', { name: 'Take it to the machine' }).click();
  const href = await page.getByRole('link', { name: 'Card file' }).getAttribute('href');
  const file = await fetch(`${base}${href ?? ''}`).then((reply) => reply.text());
  const card = parseCardFile(file);
  if (!card.ok) throw new Error(card.problem.code);
  return card.value;
};

/** How long the card takes if one rung is cut at another speed than its own. */
const secondsWith = (card: Card, letter: string, factor: number): number => {
  const rungs = card.rungs.map((rung) => {
    const { speedMmPerS } = rung.setting;
    const setting = { ...rung.setting, speedMmPerS: speedMmPerS * factor };
    return rung.letter === letter ? { ...rung, setting } : rung;
  });
  return cardTime({ ...card, rungs }, truth).seconds;
};

describe('the time of a card at the machine, on a phone', () => {
  const workshop = openWorkshop();

  it('says where it goes, and names the rung that a wrong time betrays', async () => {
    const { page, complaints, close } = await workshop.visit({ viewport: phone });
    await page.goto(workshop.base);
    await fetch(`${workshop.base}/api/machines/default`, {
      method: 'PUT',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({
        machine: { ...undescribedMachine, motion: { ...truth, timeErrorPct: 1 } },
      }),
    });
    const card = await takeCard(page, workshop.base);
    const told = page.getByLabel(/^It should take .*: what did the machine say\?$/);
    await page.getByText(/give or take: between .* Of that: .* cutting/).waitFor();

    const right = cardTime(card, truth).seconds;
    await told.fill(`${right.toFixed(0)} s`);
    await page.getByText(/ lies within the band\.$/).waitFor();
    await page.getByText(/^It took as long as it should\./).waitFor();

    // A digit was dropped: 14 mm/s was typed as 1.4.
    // Of a setting that then is like no other one of the card.
    const apartOf = (speed: number): number =>
      Math.min(
        ...card.rungs.map(({ setting }) => Math.abs(Math.log((0.1 * speed) / setting.speedMmPerS))),
      );
    const [chosen] = card.rungs
      .filter(({ setting }) => setting.speedMmPerS >= 8)
      .toSorted((a, b) => apartOf(b.setting.speedMmPerS) - apartOf(a.setting.speedMmPerS));
    const letter = chosen?.letter ?? '';
    await told.fill(secondsWith(card, letter, 0.1).toFixed(0));
    await page.getByText(/is more than the band allows/).waitFor();
    await page
      .getByText(new RegExp(`^Setting ${letter}: typed as .* perhaps; it should be `))
      .waitFor();
    expect(await axeFindings(page)).toEqual([]);
    await picture(page, 'a phone time of a card');

    // What was told is still there where the card is read.
    await page.getByRole('link', { name: 'It is cut: read it' }).click();
    await page.getByText('How long it takes').click();
    await page.getByText(new RegExp(`^Setting ${letter}: typed as `)).waitFor();
    expect(complaints).toEqual([]);
    await close();
  });
});

describe('how a machine moves, at a desk', () => {
  const workshop = openWorkshop();

  it('is told from timed jobs, kept, and narrows the time of a card; or is typed', async () => {
    const { page, complaints, close } = await workshop.visit({ viewport: desk });
    await takeCard(page, workshop.base);
    await page.getByText('How this machine moves is not known').waitFor();
    const told = page.getByLabel(/what did the machine say\?$/);
    await told.fill('1:00:00');
    await page.getByText(/is more than the band allows/).waitFor();
    await page.getByText(/not known closely enough to tell from the time what was typed/).waitFor();
    await picture(page, 'a desk time of a card, motion unknown');
    await told.fill('');
    await page.getByRole('link', { name: 'Say how it moves' }).click();
    await page.getByText(/Disarm the beam as the maker’s manual says/).waitFor();

    const download = async (name: string): Promise<string> => {
      const [file] = await Promise.all([
        page.waitForEvent('download'),
        page.getByRole('button', { name, exact: true }).click(),
      ]);
      return readFile(await file.path(), 'utf8');
    };
    expect(await download('SVG, Job 1')).toContain('Disarm the beam');
    expect(await download('DXF, Job 2')).toContain('beam-disarmed');
    expect(await download('G-code, Job 3')).not.toMatch(/^M0*[34]\b/m);

    const fit = page.getByRole('button', { name: 'Work out how it moves' });
    // However short the work is, the sign that it goes on was there.
    await page.evaluate(() => {
      const page = globalThis as unknown as { sawWork: boolean };
      new MutationObserver(() => {
        page.sawWork ||= document.querySelector('.timed-working progress') !== null;
      }).observe(document.body, { childList: true, subtree: true });
    });
    expect(await fit.isDisabled()).toBe(true);
    for (const [i, { moves }] of jobsToTime(undescribedMachine).entries()) {
      const { seconds } = wholeJobTime(moves, truth);
      await page.getByLabel(`Job ${String(i + 1)} took`).fill(seconds.toFixed(1));
    }
    await fit.click();
    const values = await page.getByText(/^Acceleration \d+/).innerText();
    expect(
      await page.evaluate(() => (globalThis as unknown as { sawWork?: boolean }).sawWork),
    ).toBe(true);
    const acceleration = Number(/Acceleration (\d+)/.exec(values)?.[1]);
    expect(acceleration / truth.accelerationMmPerS2).toBeGreaterThan(0.85);
    expect(acceleration / truth.accelerationMmPerS2).toBeLessThan(1.15);
    expect(await page.getByRole('row').count()).toBe(7);
    expect(await axeFindings(page)).toEqual([]);
    await picture(page, 'a desk how it moves');
    await page.getByRole('button', { name: 'Keep it in the machine' }).click();
    await page.getByText(/^Known: /).waitFor();

    await page.goBack();
    await page.getByText(/give or take: between/).waitFor();
    expect(await page.getByText('How this machine moves is not known').count()).toBe(0);

    await page.goto(`${workshop.base}/machine`);
    await page.getByRole('link', { name: 'How it moves' }).click();
    await page.getByLabel('Acceleration', { exact: true }).fill('2 m/s2');
    await page.getByText(/^Known: 2000\u202fmm\/s²/).waitFor();
    await page.reload();
    await page.getByText(/^Known: 2000\u202fmm\/s²/).waitFor();
    expect(complaints).toEqual([]);
    await close();
  });
});
