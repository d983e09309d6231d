import { describe, expect, it } from 'vitest';
import type { ProvenSetting } from '../../src/core/book/provenSetting.ts';
import { desk, phone } from './page.ts';
import { storedStudy } from './sheets.ts';
import { openWorkshop } from './workshop.ts';

const workshop = openWorkshop();
const mark = /invented/i;

const ask = async (path: string): Promise<string> => {
  const reply = await fetch(`${workshop.base}${path}`);
  if (!reply.ok) throw new Error(`${path}: ${String(reply.status)}`);
  return Buffer.from(await reply.arrayBuffer()).toString('latin1');
};

/** Every example sheet, and what is kept of it. */
const example = async () => {
  const opened = await fetch(`${workshop.base}/api/example`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: '{}',
  });
  if (!opened.ok) throw new Error(`the example: ${String(opened.status)}`);
  const { studies } = JSON.parse(await ask('/api/studies')) as {
    readonly studies: readonly { readonly id: string }[];
  };
  const { entries } = JSON.parse(await ask('/api/book')) as {
    readonly entries: readonly { readonly entry: ProvenSetting }[];
  };
  const whole = await Promise.all(studies.map(({ id }) => storedStudy(workshop.base, id)));
  return { studies: whole, entries: entries.map(({ entry }) => entry) };
};

describe('the example', () => {
  it.each([
    ['a phone', phone],
    ['a desk', desk],
  ])(
    'says on every screen of it that it is invented, on %s',
    async (_where, viewport) => {
      const { studies, entries } = await example();
      expect(studies.length).toBeGreaterThan(1);
      expect(entries.length).toBeGreaterThan(0);
      const { page, complaints, close } = await workshop.visit({ viewport });
      const addresses = [
        '/bed',
        ...studies.flatMap(({ id, cards }) => [
          `/study/${id}`,
          `/study/${id}/sheet`,
          `/study/${id}/card`,
          `/study/${id}/describe`,
          `/study/${id}/prove`,
          `/compare?sheet=${id}`,
          ...cards.flatMap(({ code }) => [
            `/study/${id}/card/${code}`,
            `/study/${id}/card/${code}/machine`,
            `/study/${id}/card/${code}/check`,
          ]),
        ]),
        ...entries.flatMap(({ id }) => [`/book/${id}`, `/book/${id}/label`, `/book/${id}/prove`]),
        '/machine/corners',
      ];
      for (const address of addresses) {
        await page.goto(workshop.base + address);
        await page.locator('h1').waitFor();
        await page
          .locator('.invented')
          .first()
          .waitFor({ timeout: 8_000 })
          .catch(() => undefined);
        expect(await page.locator('main').innerText(), address).toMatch(mark);
      }
      expect(complaints).toEqual([]);
      await close();
    },
    240_000,
  );

  it('says so in every file and every line of its tables', async () => {
    const { studies, entries } = await example();
    for (const { id, cards } of studies) {
      for (const { code } of cards) {
        for (const kind of ['svg', 'dxf', 'gcode', 'json'])
          expect(await ask(`/api/studies/${id}/cards/${code}/card.${kind}`), kind).toMatch(
            kind === 'json' ? /"isExample":\s*true/ : mark,
          );
      }
    }
    const [head = '', ...rows] = (await ask('/api/export/book.csv')).trim().split('\r\n');
    expect(head).toContain('invented');
    expect(rows).toHaveLength(entries.length);
    for (const row of rows) expect(row).toMatch(/,invented$|,true$|,invented example$/);
  });
});
