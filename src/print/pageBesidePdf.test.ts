import { describe, expect, it } from 'vitest';

import { textOfPdf } from '../../test/fixtures/textOfPdf.ts';
import { pagesBeside } from '../../test/samples/pagesBeside.ts';
import { allCautions } from '../words/texts.ts';
import { problemInWords } from '../words/words.ts';
import { printable } from './fonts.ts';
import { pageBesidePdf } from './pageBesidePdf.ts';

const madeAt = '2031-04-05T06:07:08.000Z';
const bare = (text: string): string => printable(text).replaceAll(/\s/g, '');
const pages = await pagesBeside();

describe.each(pages)('the page beside the machine as PDF: $title', (page) => {
  it('says how it lies, every step, every entry, every caution and every remark', async () => {
    const text = textOfPdf(await pageBesidePdf(page, { madeAt }));
    const { title, about, minded, steps, entries, noteFields, acts, remarks = [] } = page;
    const cautions = acts.flatMap((act) => allCautions[act]).map(({ sentence }) => sentence);
    const remarked = remarks.map((remark) => problemInWords(remark).message);
    const wanted = [title, about, minded, ...steps, ...entries, ...noteFields];
    expect(cautions.length).toBeGreaterThan(5);
    for (const sentence of [...wanted, ...cautions, ...remarked])
      expect(text).toContain(bare(sentence));
  });

  it('is the same bytes for the same page at the same time', async () => {
    const [first, second] = [
      await pageBesidePdf(page, { madeAt }),
      await pageBesidePdf(page, { madeAt }),
    ];
    expect(Buffer.compare(first, second)).toBe(0);
  });
});
