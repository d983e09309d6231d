import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { reasoningText, whyText } from '../../src/words/texts.ts';
import { answerText, findingsInEveryLook, openAll, phone, tapCard } from './page.ts';
import { openWorkshop } from './workshop.ts';

const workshop = openWorkshop();

/** A card that is read, with its reasons open and reckoned. */
const openReasons = async (page: Page, base: string): Promise<void> => {
  await page.goto(base);
  await tapCard(page, { out: 0.6, through: 0.8 });
  await page.waitForSelector('.answer-sentence[aria-busy="false"] .answer-cut');
  await page.getByText('Why this speed?').click();
  await page.waitForSelector('.why[aria-busy="false"]');
};

/** What the answer on screen says: `Cut at 14.2 mm/s, 30 %.` */
const answered = async (page: Page) => {
  const [, speed = '', power = ''] =
    /^Cut at ([\d.]+)\u202fmm\/s, ([\d.]+)\u202f%/.exec(await answerText(page)) ?? [];
  return { speed: Number(speed), power: Number(power) };
};

/** The printed page of reasons, fetched as the link on the screen says. */
const printed = async (page: Page, base: string): Promise<Buffer> => {
  const href = await page.getByRole('link', { name: whyText.pdf }).getAttribute('href');
  const reply = await fetch(base + (href ?? ''));
  expect(reply.status).toBe(200);
  expect(reply.headers.get('content-type')).toContain('application/pdf');
  return Buffer.from(await reply.arrayBuffer());
};

/** A text as the head of a PDF may write it when it has more than plain letters: two bytes a sign, highest first. */
const inTwoBytes = (text: string): Buffer => Buffer.from(text, 'utf16le').swap16();

describe('why an answer is so', () => {
  it('is shown, said, reckoned out one click below, and printed about the very speed on the screen', async () => {
    const { page, complaints, close } = await workshop.visit({ viewport: phone });
    await openReasons(page, workshop.base);
    const { speed, power } = await answered(page);
    expect(await page.locator('.why-held').innerText()).toContain(`${String(speed)}\u202fmm/s`);
    const drawn = page.getByRole('img', { name: whyText.pictureLabel(speed) });
    // A sign for each of the twelve cells, and a ring at least: something carries the answer.
    expect(await drawn.locator('.why-out, .why-hangs, .why-stays').count()).toBe(12);
    expect(await drawn.locator('.why-ring').count()).toBeGreaterThan(0);
    for (const title of [whyText.carries, whyText.changes, whyText.expectation])
      await page.getByRole('heading', { name: title }).waitFor();

    await page.getByText(whyText.figures).click();
    const learnt = page.getByRole('table', { name: whyText.learntTable });
    expect(await learnt.getByRole('row').count()).toBeGreaterThan(4);
    await openAll(page);
    expect(await findingsInEveryLook(page, 'why')).toEqual([]);

    const pdf = await printed(page, workshop.base);
    expect(pdf.subarray(0, 5).toString('latin1')).toBe('%PDF-');
    expect(pdf.toString('latin1').match(/\/Type \/Page\b/g)).toHaveLength(1);
    expect(pdf.includes(inTwoBytes(reasoningText.title(speed, power)))).toBe(true);
    expect(pdf.includes(inTwoBytes(reasoningText.title(speed + 1, power)))).toBe(false);
    expect(complaints).toEqual([]);
    await close();
  });
});
