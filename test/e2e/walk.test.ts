import { describe, expect, it } from 'vitest';
import { answerText, cellsOn, desk, phone, picture, tapCard } from './page.ts';
import { openWorkshop } from './workshop.ts';

const cut = /^Cut at [\d.]+\u202fmm\/s, [\d.]+\u202f%\.$/;

describe.each([
  ['a phone', phone],
  ['a desk', desk],
])('the main job as a new user on %s', (where, viewport) => {
  const workshop = openWorkshop();

  it('answers on the first screen by tapping alone', async () => {
    const { page, complaints, close } = await workshop.visit({ viewport });
    await page.goto(workshop.base);
    expect(await page.locator('h1').innerText()).toBe('What fell out?');
    const shown: unknown = await fetch(`${workshop.base}/api/home`).then((reply) => reply.json());
    expect(shown).toMatchObject({ hasWork: false }); // nothing is saved until it is tapped
    await picture(page, `${where} first`);

    await tapCard(page);
    await page.waitForSelector('.answer-cut');
    expect(await answerText(page)).toMatch(cut);
    expect(await page.locator('.answer-promise').innerText()).toBe(
      '97 in 100 come out; we are 95\u202f% sure.',
    );
    await picture(page, `${where} first answered`);
    // What a closed browser has not sent, no other visitor sees.
    await page.getByText('All saved').waitFor({ state: 'attached' });
    expect(complaints).toEqual([]);
    await close();
  });

  it('opens on the sheet on the bed from then on', async () => {
    const { page, close } = await workshop.visit({ viewport });
    await page.goto(workshop.base);
    await page.getByRole('heading', { level: 1, name: 'On the bed' }).waitFor();
    await page.waitForSelector('.answer-cut');
    await page.getByText('12 of 12 shapes read').waitFor();
    await picture(page, `${where} bed before keeping`);
    await close();
  });

  it('reads a card from the drawer: one row, odd steps, one cell missing', async () => {
    const { page, complaints, close } = await workshop.visit({ viewport });
    await page.goto(workshop.base);
    await page.getByRole('link', { name: 'I have a cut card here' }).click();
    await page.getByLabel('Speeds', { exact: true }).fill('10, 11.5, 13, 14, 17, 22 mm/s');
    await page.getByLabel('Power settings').fill('40');
    await page.getByRole('button', { name: '13 mm/s 40%' }).click();
    await picture(page, `${where} describe`);
    await page.getByRole('button', { name: 'Read it' }).click();
    const cells = await cellsOn(page);
    expect(cells.map(({ speed }) => speed)).toEqual([10, 11.5, 14, 17, 22]);
    await tapCard(page);
    await page.waitForSelector('.answer-cut, .answer-none');
    expect(complaints).toEqual([]);
    await close();
  });

  it('walks from a new sheet to the book', async () => {
    const { page, complaints, close } = await workshop.visit({ viewport });
    let clicks = 0;
    const press = async (role: 'button' | 'link', name: RegExp | string): Promise<void> => {
      await page.getByRole(role, { name }).first().click();
      clicks += 1;
    };
    await page.goto(`${workshop.base}/`);
    await press('link', 'I have a new sheet');
    await page.getByLabel('Material').fill('birch plywood');
    await page.getByLabel('Speed', { exact: true }).fill('14');
    await page.getByLabel('Power setting', { exact: true }).fill('34');
    await page.getByText('nearly always').click();
    clicks += 1;
    await picture(page, `${where} sheet`);
    await press('button', 'Make a card for it');

    await page.getByRole('img', { name: /as it will be cut/ }).waitFor();
    await picture(page, `${where} card`);
    await press('button', 'Take it to the machine');

    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('link', { name: 'SVG' }).click(),
    ]);
    clicks += 1;
    const svg = await (await download.createReadStream()).toArray();
    expect(Buffer.concat(svg).toString()).toMatch(/<svg[\s\S]*34(\.0)?pct/);
    expect(await page.getByRole('table').getByRole('row').count()).toBe(7);
    await picture(page, `${where} take`);
    await press('link', 'It is cut: read it');

    const taps = await tapCard(page);
    await page.waitForSelector('.answer-cut');
    await picture(page, `${where} study`);
    await press('button', /^Keep .* in the book$/);
    await press('link', 'Open it');
    await page.getByRole('heading', { level: 1, name: /^Cut at/ }).waitFor();
    await page.getByText('12 shapes of 1 card').waitFor();

    await page.getByLabel('Parts cut').fill('200');
    await page.getByLabel('Needed a knife').fill('2');
    await page.getByLabel('Lost to a pocket or knot').fill('1');
    await page.getByLabel('Length of cut of one part').fill('60');
    await page.getByText('197 of 200 parts out').waitFor();
    await press('button', 'Save the count');
    await page.getByText(/2 of 199 sound parts did not come out/).waitFor();
    await picture(page, `${where} entry`);
    await press('link', 'The whole book');
    await page.getByRole('link', { name: /birch plywood/ }).waitFor();
    await picture(page, `${where} book`);

    // From the first screen to a kept setting and a counted order: the clicks beside the taps on the card itself.
    expect(clicks).toBeLessThanOrEqual(10);
    expect(taps).toBeLessThanOrEqual(24);
    await page.goto(workshop.base);
    await page.getByText('197 of 200 parts out').waitFor();
    await picture(page, `${where} bed`);
    expect(complaints).toEqual([]);
    await close();
  });

  it('takes a setting out of the book when told so twice', async () => {
    const { page, complaints, close } = await workshop.visit({ viewport });
    await page.goto(`${workshop.base}/book`);
    await page.getByRole('link', { name: /birch plywood/ }).click();
    await page.getByText('Count by count').waitFor(); // else what is still being asked of it would find it gone
    const takeOut = page.getByRole('button', { name: 'Take it out of the book' });
    await takeOut.click();
    await page.getByRole('button', { name: 'Keep it' }).click();
    await takeOut.click();
    await page.getByText('goes with 1 counted order').waitFor();
    await page.getByRole('button', { name: 'Yes, remove it' }).click();
    await page.getByText('Nothing is kept yet').waitFor();
    await picture(page, `${where} empty book`);
    expect(complaints).toEqual([]);
    await close();
  });

  it('stops at a refused material with reason and source', async () => {
    const { page, close } = await workshop.visit({ viewport });
    await page.goto(`${workshop.base}/sheets/new`);
    await page.getByLabel('Material').fill('PVC foam board');
    await page
      .getByRole('alert')
      .getByText(/hydrogen chloride/i)
      .first()
      .waitFor();
    expect(await page.getByRole('button', { name: 'Make a card for it' }).isDisabled()).toBe(true);
    await page.getByText('Who says so').click();
    await page
      .getByText(/University/)
      .first()
      .waitFor();
    await picture(page, `${where} refused`);
    await close();
  });
});
