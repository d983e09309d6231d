import { describe, expect, it } from 'vitest';

import { demoRequest } from '../../test/fixtures/cardRequest.ts';
import { textOfPdf } from '../../test/fixtures/textOfPdf.ts';
import type { CardRequest } from '../core/card/cardRequest.ts';
import { designCard } from '../core/card/designCard.ts';
import { jobSheet } from '../core/card/jobSheet.ts';
import { inchUnits, metricUnits, type UnitPreference } from '../core/units/unitPreference.ts';
import { unitsShown, allCautions, jobSheetText } from '../words/texts.ts';
import { printable } from './fonts.ts';
import { jobSheetPdf } from './jobSheetPdf.ts';

const pdfOf = (change: Partial<CardRequest> = {}, units?: UnitPreference): Promise<Uint8Array> => {
  const outcome = designCard({ ...demoRequest, ...change });
  if (!outcome.ok) throw new Error(outcome.problem.code);
  const { card } = outcome.value;
  return jobSheetPdf(jobSheet(card), {
    stock: '3 mm birch plywood',
    madeAt: '2031-04-05T06:07:08.000Z',
    ...(units === undefined ? {} : { units }),
  });
};

const bare = (text: string): string => printable(text).replaceAll(/\s/g, '');

describe('the job sheet as PDF', () => {
  it('is a PDF with its typefaces inside and none from elsewhere', async () => {
    const raw = Buffer.from(await pdfOf()).toString('latin1');
    expect(raw.startsWith('%PDF-1.')).toBe(true);
    expect(raw.trimEnd().endsWith('%%EOF')).toBe(true);
    expect(raw).toMatch(/\/FontFile2 /);
    expect(raw).not.toContain('Helvetica');
  });

  it('speaks in the units that were asked for, in those alone, and leaves those of everybody else', async () => {
    const text = textOfPdf(await pdfOf({ air: { kPa: 100 } }, inchUnits));
    expect(text).toMatch(/[\d.]+in\/min/);
    expect(text).toMatch(/[\d.]+psi/);
    expect(text.replace('3mmbirchplywood', '')).not.toMatch(/\d(?:mm|kPa)/);
    expect(unitsShown()).toBe(metricUnits);
    expect(textOfPdf(await pdfOf())).toMatch(/[\d.]+mm\/s/);
  });

  it('prints names in any script: Cyrillic, Greek, Chinese, Korean, Polish, Thai; a sign that no font has is a question mark', async () => {
    const names = ['фанера', 'κόντραπλακέ', '椴木胶合板', '자작나무', 'sklejkabłonowaź', 'ไม้อัด'];
    const outcome = designCard({ ...demoRequest, batch: names[0] ?? '', sheet: '第七批' });
    if (!outcome.ok) throw new Error(outcome.problem.code);
    const stock = `3 mm ${names.join(' ')} \u{1F9FF}`;
    const make = () =>
      jobSheetPdf(jobSheet(outcome.value.card), { stock, madeAt: '2031-04-05T06:07:08.000Z' });
    const bytes = await make();
    const text = textOfPdf(bytes);
    for (const name of [...names, '第七批', '?']) expect(text).toContain(name);
    expect(Buffer.compare(bytes, await make())).toBe(0);
    // Only the files whose signs are printed are loaded and put in.
    expect(bytes.length).toBeLessThan(250_000);
  });

  it('repeats title and heads of columns on the pages after the first', async () => {
    const text = textOfPdf(
      await pdfOf({
        vary: 'speed-and-power',
        settingsAtMost: 30,
        cellsEach: 1,
        sheetMm: [230, 195],
      }),
    );
    expect(text.split(bare(jobSheetText.typeInTitle)).length).toBeGreaterThan(2);
    expect(text.split(bare(jobSheetText.figureName('minPowerPct'))).length).toBeGreaterThan(2);
    expect(text).toContain(bare(`${jobSheetText.title('K7WM')} · 2`));
  });

  it('is the same bytes for the same card at the same time', async () => {
    expect(Buffer.compare(await pdfOf(), await pdfOf())).toBe(0);
  });

  it('says every setting, every step, every caution and the time, with no sign missing', async () => {
    const text = textOfPdf(await pdfOf());
    const outcome = designCard(demoRequest);
    if (!outcome.ok) throw new Error(outcome.problem.code);
    const sheet = jobSheet(outcome.value.card);
    const wanted = [
      jobSheetText.title('K7WM'),
      jobSheetText.time(sheet.time),
      jobSheetText.zeroHere,
      ...sheet.card.rungs.map(({ setting }) => jobSheetText.figure('speedMmPerS', setting)),
      ...sheet.steps.map((step) => jobSheetText.step(step)),
      ...sheet.noteFields.map((field) => jobSheetText.note(field)),
      ...sheet.cautions.flatMap((act) => allCautions[act]).map(({ sentence }) => sentence),
    ];
    for (const line of wanted) expect(text).toContain(bare(line));
  });

  it('puts the essential cautions before everything that is to be done', async () => {
    const text = textOfPdf(await pdfOf());
    expect(text.indexOf(bare('Never leave the machine'))).toBeLessThan(
      text.indexOf(bare(jobSheetText.typeInTitle)),
    );
  });

  it('goes on on a further page where a card has many rungs', async () => {
    const pages = async (change: Partial<CardRequest>): Promise<number> =>
      [
        ...Buffer.from(await pdfOf(change))
          .toString('latin1')
          .matchAll(/\/Type \/Page\b/g),
      ].length;
    const many = { settingsAtMost: 30, cellsEach: 1, sheetMm: [400, 300] as const };
    expect(await pages(many)).toBeGreaterThan(await pages({}));
  });
});
