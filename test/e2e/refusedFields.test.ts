import type { Locator, Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { everyScreen, oneOfEverything, settled, type Made } from './everyScreen.ts';
import { desk, openAll } from './page.ts';
import { openWorkshop } from './workshop.ts';

const workshop = openWorkshop();
let made: Made;
beforeAll(async () => {
  made = await oneOfEverything(workshop);
});

/** What no field of figures takes, and what none of words does. */
const noFigures = ['-5', 'abc', '1.2.3'];
/** A line of one's own may not light the beam. */
const noGcode = ['M3 S100', '%'];
const noWords = ['birch\tplywood', 'x'.repeat(130)];
const noNote = ['x'.repeat(4001)];

interface Box {
  readonly label: string;
  readonly takesFigures: boolean;
}

const typedInto = 'main input[type="text"]:visible, main textarea:visible';

const boxesOn = (page: Page): Promise<readonly Box[]> =>
  page.locator(typedInto).evaluateAll((all) =>
    all.map((box) => ({
      label:
        box instanceof HTMLInputElement || box instanceof HTMLTextAreaElement
          ? (box.labels?.[0]?.textContent ?? '')
          : '',
      takesFigures: box.classList.contains('figure-text'),
    })),
  );

const refusedBy = (label: string, takesFigures: boolean): readonly string[] => {
  if (/own lines/.test(label)) return noGcode;
  if (/^Note/.test(label)) return noNote;
  return takesFigures ? noFigures : noWords;
};

/** What is changed on the server from here on. */
const listenTo = (page: Page) => {
  const changes: string[] = [];
  const refusals: string[] = [];
  page.on('request', (request) => {
    if (request.method() !== 'GET' && !request.url().includes('/calc/'))
      changes.push(`${request.method()} ${request.url()}`);
  });
  page.on('response', (response) => {
    if (response.request().method() !== 'GET' && response.status() >= 400)
      refusals.push(`${String(response.status())} ${response.url()}`);
  });
  return { changes, refusals };
};

const note = async (box: Locator): Promise<string> => {
  const id = await box.getAttribute('aria-describedby');
  return id === null ? '' : ((await box.page().locator(`[id="${id}"]`).textContent()) ?? '');
};

/** Figure by figure, slowly: what the first one changes elsewhere takes neither the caret nor the text. */
const typedThrough = async (box: Locator, where: string): Promise<void> => {
  await box.fill('');
  await box.focus();
  await box.page().keyboard.type('12', { delay: 200 });
  expect(await box.inputValue(), where).toBe('12');
  expect(await box.evaluate((each) => each === document.activeElement), where).toBe(true);
};

describe('a field that cannot take what was typed', () => {
  it('asks for what the server would miss, before it is sent', async () => {
    const { page, close } = await workshop.visit({ viewport: desk });
    const { refusals } = listenTo(page);
    await page.goto(`${workshop.base}${made.entry}`);
    const batch = page.getByLabel('Name of the new batch');
    await page.getByRole('button', { name: 'Make the strip' }).click();
    await page.getByText('A strip in a new batch needs that batch’s name.').waitFor();
    expect(await batch.getAttribute('aria-invalid')).toBe('true');
    await batch.fill('June');
    expect(await batch.getAttribute('aria-invalid')).toBeNull();
    await page.getByRole('button', { name: 'Make the strip' }).click();
    await page.waitForURL(/\/machine$/);
    expect(refusals).toEqual([]);
    await close();
  });

  it('sends the reader back to it, not what stood there before', async () => {
    const { page, close } = await workshop.visit({ viewport: desk });
    await page.goto(`${workshop.base}/sheets/new`);
    await page.getByLabel('Material').fill('birch plywood');
    const thickness = page.getByLabel(/^Thickness/).first();
    await thickness.fill('0');
    await page.getByRole('button', { name: 'Make a card for it' }).click();
    expect(await thickness.evaluate((box) => box === document.activeElement)).toBe(true);
    expect(new URL(page.url()).pathname).toBe('/sheets/new');
    await thickness.fill('4');
    await page.getByRole('button', { name: 'Make a card for it' }).click();
    await page.waitForURL(/\/study\//);
    await close();
  });

  // Last, since what it types into other fields is taken, and stays where a field cannot be empty.
  it('says so where it stands, keeps what was typed, and lets nothing be sent, on every screen', async () => {
    const { page, complaints, close } = await workshop.visit({ viewport: desk });
    const { changes, refusals } = listenTo(page);
    let tried = 0;
    for (const [name, address] of everyScreen(made)) {
      await page.goto(workshop.base + address);
      await settled(page);
      await openAll(page);
      const boxes = await boxesOn(page);
      for (const [i, { label, takesFigures }] of boxes.entries()) {
        const box = page.locator(typedInto).nth(i);
        const before = await box.inputValue();
        const slips = refusedBy(label, takesFigures);
        for (const typed of slips) {
          const where = `${name}, ${label}: ${typed}`;
          await box.fill(typed);
          await box.blur();
          expect(await box.inputValue(), where).toBe(typed);
          expect(await box.getAttribute('aria-invalid'), where).toBe('true');
          expect((await note(box)).length, where).toBeGreaterThan(10);
          const sent = changes.length;
          if (await box.evaluate((each) => each instanceof HTMLInputElement))
            await box.press('Enter');
          expect(new URL(page.url()).pathname, where).toBe(
            new URL(address, workshop.base).pathname,
          );
          expect(changes.slice(sent), where).toEqual([]);
          expect(await box.inputValue(), where).toBe(typed);
          tried += 1;
        }
        if (takesFigures) await typedThrough(box, `${name}, ${label}`);
        await box.fill(before);
        await box.blur();
      }
    }
    expect(tried).toBeGreaterThan(200);
    expect(refusals).toEqual([]);
    expect(complaints).toEqual([]);
    await close();
  }, 600_000);
});
