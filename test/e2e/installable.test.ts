import sharp from 'sharp';
import { expect, it } from 'vitest';
import { z } from 'zod';
import { phone } from './page.ts';
import { openWorkshop } from './workshop.ts';

const workshop = openWorkshop();

/** What is asked for of it: W3C Web Application Manifest. */
const appShape = z.object({
  display: z.string(),
  start_url: z.string(),
  icons: z
    .array(z.object({ src: z.string(), sizes: z.string(), purpose: z.string().optional() }))
    .min(1),
});

// The browser itself is asked whether the page can be put among its programs.
it('can be put on the screen as a program', async () => {
  const { page, close } = await workshop.visit({ viewport: phone });
  await page.goto(workshop.base);
  const devtools = await page.context().newCDPSession(page);
  const { errors, data, url } = await devtools.send('Page.getAppManifest');
  expect(errors).toEqual([]);
  expect(new URL(url).pathname).toBe('/app.webmanifest');
  const { display, start_url: start, icons } = appShape.parse(JSON.parse(data ?? ''));
  expect([display, start]).toEqual(['standalone', '/']);
  for (const { src, sizes } of icons) {
    const picture = await fetch(new URL(src, workshop.base));
    expect(picture.status, src).toBe(200);
    const { width, height, format } = await sharp(await picture.arrayBuffer()).metadata();
    if (sizes === 'any') expect(format, src).toBe('svg');
    else expect(`${String(width)}x${String(height)}`, src).toBe(sizes);
  }
  expect(icons.map(({ purpose }) => purpose)).toContain('maskable');
  const { installabilityErrors } = await devtools.send('Page.getInstallabilityErrors');
  expect(installabilityErrors.map(({ errorId }) => errorId)).toEqual([]);
  await close();
});
