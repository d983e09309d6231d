import type { Page } from 'playwright-core';
import { desk, readFirstCard } from './page.ts';
import type { Workshop } from './workshop.ts';

/** Where one of everything stands. */
export interface Made {
  readonly study: string;
  readonly card: string;
  readonly entry: string;
}

/** Makes one of everything, so that every screen has something on it. */
export const oneOfEverything = async (workshop: Workshop): Promise<Made> => {
  const { page, close } = await workshop.visit({ viewport: desk });
  await readFirstCard(page, workshop.base);
  await page.getByRole('button', { name: /^Keep .* in the book$/ }).click();
  await page.getByRole('link', { name: 'Open it' }).click();
  await page.getByText('Came from').waitFor();
  const entry = new URL(page.url()).pathname;
  await page.goBack();
  const card = new URL(page.url()).pathname;
  await close();
  return { study: card.split('/card/')[0] ?? '', card, entry };
};

/** Every screen by a name, and where it stands. */
export const everyScreen = (made: Made): readonly (readonly [name: string, address: string])[] => [
  ['bed', '/'],
  ['study', made.card],
  ['card', `${made.study}/card`],
  ['take', `${made.card}/machine`],
  ['read a photo', `${made.card}/photo`],
  ['new sheet', '/sheets/new'],
  ['describe', '/cards/describe'],
  ['check', `${made.card}/check`],
  ['prove', `${made.study}/prove`],
  ['prove a kept one', `${made.entry}/prove`],
  ['entry', made.entry],
  ['label', `${made.entry}/label`],
  ['kerf of a kept one', `${made.entry}/kerf`],
  ['marks beside a kept one', `${made.entry}/marks`],
  ['kerf', `${made.study}/kerf`],
  ['wall', '/book/wall'],
  ['run', '/sheets/run'],
  ['describe one more', `${made.study}/describe`],
  ['change a sheet', `${made.study}/sheet`],
  ['book', '/book'],
  ['machine', '/machine'],
  ['meter', '/machine/meter'],
  ['focus', '/machine/focus'],
  ['motion', '/machine/motion'],
  ['four corners', '/machine/corners'],
  ['order', `${made.study}/order`],
  ['promises kept', '/book/promises'],
  ['not taken', '/not-taken'],
  ['compare', '/compare'],
  ['trouble', '/trouble'],
  ['nowhere', '/nowhere'],
];

/** The screen is drawn, and what it asked for has come. The stream of news stays open, so the network is never idle. */
export const settled = async (page: Page): Promise<void> => {
  await page.locator('h1').waitFor();
  await page.waitForFunction(() => document.querySelector('[aria-busy="true"]') === null);
  await page.waitForTimeout(250);
};
