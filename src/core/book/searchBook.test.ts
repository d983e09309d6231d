import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { defaultPromise } from '../reading/promise.ts';
import type { ProvenSetting } from './provenSetting.ts';
import { searchBook } from './searchBook.ts';

const entry = (
  id: string,
  holdsFor: Partial<ProvenSetting['holdsFor']>,
  over: Partial<ProvenSetting> = {},
): ProvenSetting => ({
  version: 1,
  id,
  code: 'AAAA',
  isExample: false,
  keptAt: '2031-05-06T07:08:09.000Z',
  setting: { powerPct: 30, speedMmPerS: 14, passes: 1 },
  aim: 'fastest',
  promise: defaultPromise,
  outOf100Mean: 98,
  surePct: 95,
  holdsFor: { material: 'plywood', nominalThicknessMm: 3, ...holdsFor },
  cameFrom: { studyId: 's', cardCodes: [], cellCount: 0, partsTallied: 0, habit: false },
  ...over,
});

const book = [
  entry('acrylic', { material: 'Cast acrylic', nominalThicknessMm: 3 }),
  entry('thick', { nominalThicknessMm: 6, measuredThicknessMm: 5.25 }, { code: 'X3MQ' }),
  entry('thin', { batch: 'spring' }, { note: 'Contreplaqué, for the lamps' }),
];
const found = (text: string, ...onBed: [Parameters<typeof searchBook>[2]?]) =>
  searchBook(book, text, ...onBed).map(({ id }) => id);

describe('searching the book', () => {
  it('finds all for no words, in the order in which they came', () => {
    expect(found('  ')).toEqual(['acrylic', 'thick', 'thin']);
  });

  it('wants every word, without minding case or accents', () => {
    expect(found('ACRYLIC cast')).toEqual(['acrylic']);
    expect(found('acrylic lamps')).toEqual([]);
    expect(found('contreplaque')).toEqual(['thin']);
  });

  it('knows a thickness by its unit, from the label or from the caliper', () => {
    expect(found('3 mm')).toEqual(['acrylic', 'thin']);
    expect(found('5.3mm')).toEqual(['thick']);
    expect(found('5,25 mm plywood')).toEqual(['thick']);
  });

  it('finds the code of a shelf label', () => {
    expect(found('x3mq')).toEqual(['thick']);
  });

  it('puts the sheet on the bed first, and its batch before others', () => {
    const bed = { material: 'Plywood', nominalThicknessMm: 3, thicknessReadingsMm: [] };
    expect(found('', bed)).toEqual(['thin', 'acrylic', 'thick']);
    const twoBatches = [entry('autumn', { batch: 'autumn' }), entry('spring', { batch: 'spring' })];
    expect(searchBook(twoBatches, '', { ...bed, batch: 'spring' }).map(({ id }) => id)).toEqual([
      'spring',
      'autumn',
    ]);
  });

  it('only ever leaves out, never adds, when a word is added', () => {
    const words = fc.stringMatching(/^[a-zé ]{0,12}$/);
    fc.assert(
      fc.property(words, words, (one, more) => {
        const fewer = found(`${one} ${more}`);
        expect(found(one)).toEqual(expect.arrayContaining(fewer));
      }),
    );
  });
});
