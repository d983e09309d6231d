import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { axeFindings, phone, picture } from './page.ts';
import { openWorkshop } from './workshop.ts';

/** What could hurt someone, at the doors that a browser has. The same is tried at the command line and through HTTP in test/dangers. */
const workshop = openWorkshop();

const ask = async (path: string, method: string, body: object): Promise<void> => {
  const reply = await fetch(`${workshop.base}${path}`, {
    method,
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  });
  expect(reply.status).toBe(200);
};

const machine = {
  maxPowerPct: 70,
  speedRangeMmPerS: [1, 100],
  ratedCurrentMa: 24,
  // Reaches its rated 24 mA at 59.7 %.
  tubePoints: [
    { powerPct: 10, currentMa: 3 },
    { powerPct: 40, currentMa: 15.67 },
    { powerPct: 60, currentMa: 24.12 },
  ],
};

/** A sheet of plywood on a machine of known limits, opened where its card is designed. */
const designing = async (id: string): Promise<{ page: Page; close: () => Promise<void> }> => {
  await ask('/api/studies', 'POST', {
    id,
    stock: { material: 'birch plywood', nominalThicknessMm: 3, thicknessReadingsMm: [] },
    ask: { powerPct: 34 },
    machine,
  });
  const { page, close } = await workshop.visit({ viewport: phone });
  await page.goto(`${workshop.base}/study/${id}/card`);
  await take(page).waitFor();
  return { page, close };
};

const take = (page: Page) => page.getByRole('button', { name: 'Take it to the machine' });

const fill = async (page: Page, label: string, text: string, at = 0): Promise<void> => {
  const field = page.getByLabel(label, { exact: true }).nth(at);
  await field.fill(text);
  await field.blur();
};

interface Door {
  readonly path: string;
  readonly label: string;
  readonly stops: (page: Page) => Promise<boolean>;
  /** All else that the screen wants before it goes on. */
  readonly prepare?: (page: Page) => Promise<void>;
}

/** Every screen that is told of a material, and the act that it stops. One more is an entry. */
const doors: readonly Door[] = [
  {
    path: '/sheets/new',
    label: 'Material',
    stops: (page) => disabled(page, 'Make a card for it'),
  },
  {
    path: '/sheets/run',
    label: 'Material',
    stops: (page) => disabled(page, 'See what it promises'),
    prepare: async (page) => {
      await fill(page, 'Speed', '14');
      await fill(page, 'Power setting', '34');
      await page.getByRole('radio', { name: 'always', exact: true }).check({ force: true });
    },
  },
  {
    path: '/cards/describe',
    label: 'Material',
    stops: (page) => disabled(page, 'Read it'),
    prepare: async (page) => {
      await fill(page, 'Speeds', '10, 11.5, 13, 14, 17, 22 mm/s');
      await fill(page, 'Power settings', '40');
    },
  },
  {
    path: '/machine/focus',
    label: 'What the strip is of',
    stops: async (page) => (await page.getByRole('link', { name: 'G-code' }).count()) === 0,
  },
];
const disabled = (page: Page, name: string): Promise<boolean> =>
  page.getByRole('button', { name }).first().isDisabled();

describe.each(doors)('$path', ({ path, label, stops, prepare }) => {
  it('goes on with plywood, so that what is stopped is stopped for its material', async () => {
    const { page, close } = await workshop.visit({ viewport: phone });
    await page.goto(`${workshop.base}${path}`);
    await page.getByLabel(label).first().fill('birch plywood');
    await prepare?.(page);
    await expect.poll(() => stops(page)).toBe(false);
    await close();
  });

  it.each(['PVC sheet', 'Polystyrol', 'ПВХ', '聚氯乙烯'])(
    'stops at %s with reason and source, and offers no way round it',
    async (material) => {
      const { page, close } = await workshop.visit({ viewport: phone });
      await page.goto(`${workshop.base}${path}`);
      await page.getByLabel(label).first().fill(material);
      await prepare?.(page);
      await page.getByRole('alert').getByText('Not cut here').waitFor();
      await page.getByText('Who says so').waitFor();
      expect(await page.getByRole('button', { name: /I have looked/ }).count()).toBe(0);
      expect(await stops(page)).toBe(true);
      await close();
    },
  );

  it.each(['Kunststoff', 'leather', 'laminated paper', 'zorblax'])(
    'asks about %s, and keeps the question after a person has looked',
    async (material) => {
      const { page, close } = await workshop.visit({ viewport: phone });
      await page.goto(`${workshop.base}${path}`);
      await page.getByLabel(label).first().fill(material);
      await prepare?.(page);
      const looked = page.getByRole('button', { name: /I have looked/ });
      await looked.waitFor();
      expect(await stops(page)).toBe(true);
      await looked.click();
      await page.getByText('The question stays with every card of it').waitFor();
      await close();
    },
  );
});

describe('a card that is designed on the page', () => {
  it('makes nothing of a power above the machine’s limit', async () => {
    const { page, close } = await designing('limit');
    await fill(page, 'Power setting you run', '95');
    await page.getByRole('alert').getByText(/70/).first().waitFor();
    expect(await take(page).count()).toBe(0);
    await close();
  });

  it('drives the tube above its rating only where a person names it, and says so', async () => {
    const { page, close } = await designing('rated');
    await fill(page, 'Power setting you run', '65');
    await page
      .getByRole('alert')
      .getByText(/overdrive/i)
      .first()
      .waitFor();
    expect(await take(page).count()).toBe(0);
    await page.getByLabel(/Overdrive: let this card go above/).check();
    await take(page).waitFor();
    await page
      .getByText(/above its rated current, which it reaches at/)
      .first()
      .waitFor();
    await picture(page, 'a phone overdrive named');
    await take(page).click();
    await page
      .getByText(/Download the drawing/)
      .first()
      .waitFor();
    await close();
  });

  it.each([
    ['a scoring line at full power', 'Speed', 'Power setting', '100', '68', 0],
    ['a scoring line ten times slower than meant', 'Speed', 'Power setting', '9', '14', 0],
    ['a slow setting that is a crawl', 'Speed', 'Power setting', '1', '50', 1],
    ['a scoring line above the machine’s limit', 'Speed', 'Power setting', '100', '95', 0],
    ['a slow setting above rated current', 'Speed', 'Power setting', '30', '65', 1],
    ['a slow setting above the machine’s limit', 'Speed', 'Power setting', '60', '95', 1],
  ] as const)('makes nothing with %s', async (what, speed, power, mmPerS, pct, at) => {
    const { page, close } = await designing(`marks-${what.replaceAll(/[^a-z]/g, '-')}`);
    await page.getByText('Shape, size, marks and outline').click();
    await fill(page, speed, mmPerS, at);
    await fill(page, power, pct, at);
    await page.getByRole('alert').first().waitFor();
    expect(await take(page).count()).toBe(0);
    await close();
  });

  it.each([
    ['the scoring line in mm/min', 'Speed', '540 mm/min', 0],
    ['the scoring line in in/s', 'Speed', '0.35 in/s', 0],
    ['the slow setting in mm/min', 'Speed', '90 mm/min', 1],
    ['the slow setting in in/min', 'Speed', '3 in/min', 1],
  ] as const)('knows a speed in any unit: %s', async (what, label, text, at) => {
    const { page, close } = await designing(`unit-${what.replaceAll(/[^a-z]/g, '-')}`);
    await page.getByText('Shape, size, marks and outline').click();
    await fill(page, 'Power setting', at === 0 ? '14' : '50', at);
    await fill(page, label, text, at);
    await page.getByRole('alert').first().waitFor();
    expect(await take(page).count()).toBe(0);
    await close();
  });

  it.each([
    ['a lower limit of the machine', { machine: { ...machine, maxPowerPct: 40 } }, /kept to 40/],
    [
      'a sheet a tenth as thick',
      { stock: { material: 'birch plywood', nominalThicknessMm: 0.3, thicknessReadingsMm: [] } },
      /times the line energy/,
    ],
  ])('is not taken to the machine after %s was told', async (what, told, says) => {
    const id = `later-${what.replaceAll(/[^a-z]/g, '-')}`;
    await ask('/api/studies', 'POST', {
      id,
      stock: { material: 'birch plywood', nominalThicknessMm: 3, thicknessReadingsMm: [] },
      machine,
    });
    const made = await fetch(`${workshop.base}/api/studies/${id}/cards`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ request: { powerPct: 55 } }),
    });
    const { card } = (await made.json()) as { card: { code: string } };
    const { page, close } = await workshop.visit({ viewport: phone });
    const open = () => page.goto(`${workshop.base}/study/${id}/card/${card.code}/machine`);
    await open();
    await page.getByRole('link', { name: 'SVG' }).waitFor();
    await ask(`/api/studies/${id}`, 'PATCH', told);
    await open();
    await page.getByRole('alert').getByText(says).waitFor();
    // Neither a file nor a list of what to type.
    for (const name of ['SVG', 'DXF', 'G-code', 'Job sheet (PDF)', 'Card file'])
      expect(await page.getByRole('link', { name }).count()).toBe(0);
    expect(await page.locator('table').count()).toBe(0);
    await close();
  });

  it('reads no typed figure that lies beyond all bounds', async () => {
    const { page, close } = await designing('bounds');
    await page.getByLabel('Power setting you run', { exact: true }).fill('340');
    await page.getByText(/A power setting ends at/).waitFor();
    await page.getByLabel('Settings to type, at most').focus();
    expect(await take(page).count()).toBe(1); // still the card at 34 %
    await close();
  });
});

interface Cut {
  readonly machine: { readonly nominalW?: number };
  readonly cards: readonly {
    readonly rungs: readonly { readonly setting: { readonly speedMmPerS: number } }[];
  }[];
}

describe('the strength of a machine', () => {
  it('is asked once, in the reader’s terms, and moves the first card', async () => {
    await ask('/api/studies', 'POST', {
      id: 'strength',
      stock: { material: 'birch plywood', nominalThicknessMm: 3, thicknessReadingsMm: [] },
    });
    const { page, complaints, close } = await workshop.visit({ viewport: phone });
    const open = async (): Promise<void> => {
      await page.goto(`${workshop.base}/study/strength/card`);
      await take(page).waitFor();
    };
    const question = page.getByText('About how strong is your machine?');
    await open();
    await question.waitFor();
    await page.getByText(/Nobody has said how strong the machine is/).waitFor();
    await picture(page, 'a phone strength asked');
    expect(await axeFindings(page)).toEqual([]);
    await page.getByRole('radio', { name: /I know the watts/ }).check({ force: true });
    await fill(page, 'Sold as', '130 W');
    await page
      .getByText(/Nobody has said how strong the machine is/)
      .waitFor({ state: 'detached' });
    // A slip is mended where it was made.
    await fill(page, 'Sold as', '40 W');
    await take(page).click();
    await page
      .getByText(/Download the drawing/)
      .first()
      .waitFor();
    const { study } = (await fetch(`${workshop.base}/api/studies/strength`).then((reply) =>
      reply.json(),
    )) as { study: Cut };
    expect(study.machine.nominalW).toBe(40);
    // Half the shapes at 30 % of 40 W come out at some 4 mm/s; tubes of any strength would want up to 25.
    const speeds = study.cards.flatMap(({ rungs }) =>
      rungs.map((each) => each.setting.speedMmPerS),
    );
    expect(Math.min(...speeds)).toBeLessThan(4);
    expect(Math.max(...speeds)).toBeLessThan(15);
    await open();
    expect(await question.count()).toBe(0);
    expect(complaints).toEqual([]);
    await close();
  });
});
