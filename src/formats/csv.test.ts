import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { aCard, aStudy } from '../../test/builders.ts';
import { cellsCsv } from './cellsCsv.ts';
import { csvCell, csvTable } from './csv.ts';

interface Pair {
  readonly one: string;
  readonly two: string;
}

/** A reader of its own, by the grammar of RFC 4180, section 2. */
const readCsv = (text: string): string[][] => {
  const records: string[][] = [];
  let record: string[] = [];
  let at = 0;
  while (at < text.length) {
    let field = '';
    if (text[at] === '"') {
      at += 1;
      while (!(text[at] === '"' && text[at + 1] !== '"')) {
        if (text[at] === '"') at += 1;
        field += text.charAt(at);
        at += 1;
      }
      at += 1;
    } else {
      while (at < text.length && text[at] !== ',' && text[at] !== '\r') {
        field += text.charAt(at);
        at += 1;
      }
    }
    record.push(field);
    if (text[at] === ',') at += 1;
    else {
      expect(text.slice(at, at + 2)).toBe('\r\n');
      at += 2;
      records.push(record);
      record = [];
    }
  }
  return records;
};

describe('tables in text', () => {
  it('quotes as RFC 4180 does', () => {
    // RFC 4180, section 2, rules 5 to 7.
    expect(csvCell('aaa')).toBe('aaa');
    expect(csvCell('b\r\nbb')).toBe('"b\r\nbb"');
    expect(csvCell('b"bb')).toBe('"b""bb"');
    expect(csvCell('a,b')).toBe('"a,b"');
  });

  it('defuses what a spreadsheet would run, and leaves figures alone', () => {
    // The signs that OWASP's page on CSV injection names.
    for (const sign of ['=', '+', '-', '@', '\t', '\r'])
      expect(csvCell(`${sign}cmd`)).toMatch(/^"?'/);
    expect(csvCell(' =1+1')).toMatch(/^"?'/);
    expect(csvCell('＝1')).toMatch(/^'/);
    expect(csvCell(-3.5)).toBe('-3.5');
  });

  it('is read back as what was written', () => {
    const text = fc.string({ unit: fc.constantFrom('a', ',', '"', '\r', '\n', ' ', '=', 'é') });
    fc.assert(
      fc.property(fc.array(fc.record({ one: text, two: text })), (rows) => {
        const columns = { one: ({ one }: Pair) => one, two: ({ two }: Pair) => two };
        const written = [...csvTable(columns, rows)].join('');
        const [heading, ...records] = readCsv(written);
        expect(heading).toEqual(['one', 'two']);
        expect(records.map((record) => record.map((field) => field.replace(/^'/, '')))).toEqual(
          rows.map(({ one, two }) => [one, two]),
        );
      }),
    );
  });
});

describe('cells as a table', () => {
  it('has one line a cell, as it was cut and read', () => {
    const study = aStudy({
      stock: { material: 'plywood, birch', nominalThicknessMm: 3, thicknessReadingsMm: [3.1] },
      cards: [aCard({ batch: '=spring' })],
      events: [
        {
          id: '1',
          cardCode: 'K7QX',
          at: '2025-03-01T10:00:00.000Z',
          kind: 'graded',
          cell: 'C2',
          grade: 'out',
          how: 'pushed',
        },
        {
          id: '2',
          cardCode: 'K7QX',
          at: '2025-03-01T10:00:05.000Z',
          kind: 'edge',
          cell: 'C2',
          edge: 'brown',
          taped: true,
        },
      ],
    });
    const [heading, ...lines] = readCsv([...cellsCsv([study])].join(''));
    const last = Object.fromEntries((heading ?? []).map((name, at) => [name, lines.at(-1)?.[at]]));
    expect(lines).toHaveLength(6);
    expect(last).toMatchObject({
      material: 'plywood, birch',
      thickness_mm: '3.1',
      batch: "'=spring",
      card: 'K7QX',
      cell: 'C2',
      speed_mm_per_s: '18',
      air: '100 kPa',
      grade: 'out',
      how: 'pushed',
      edge: 'brown',
      taped: 'yes',
      spoilt: '',
    });
  });
});
