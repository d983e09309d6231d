import { describe, expect, it } from 'vitest';
import { readToolpath } from './readToolpath.ts';
import { textOfBytes } from './textOfBytes.ts';

const text =
  '<?xml version="1.0" encoding="UTF-16"?><svg xmlns="http://www.w3.org/2000/svg" width="20mm" height="10mm" viewBox="0 0 20 10"><g id="фанера"><path d="M1 1L9 9" stroke="#000"/></g></svg>';
const textOf = (bytes: Uint8Array): string =>
  textOfBytes(bytes, (utf8) => Buffer.from(utf8).toString('utf8'));
const little = Buffer.from(text, 'utf16le');
const big = Buffer.from(little).swap16();

describe('the text of a file', () => {
  it.each([
    ['UTF-8', Buffer.from(text)],
    ['UTF-8 with its mark', Buffer.concat([Buffer.from([0xef, 0xbb, 0xbf]), Buffer.from(text)])],
    ['UTF-16, little end first', Buffer.concat([Buffer.from([0xff, 0xfe]), little])],
    ['UTF-16, big end first', Buffer.concat([Buffer.from([0xfe, 0xff]), big])],
    ['UTF-16 without a mark', little],
    ['UTF-16 without a mark, big end first', big],
  ])('is read as %s', (_, bytes) => {
    expect(textOf(bytes)).toBe(text);
    const read = readToolpath(textOf(bytes));
    expect(read.ok && read.value.lines.map(({ layer }) => layer)).toEqual(['фанера']);
  });

  it('is long where the file is', () => {
    const long = 'G1 X1 Y1\n'.repeat(20_000);
    expect(textOf(Buffer.from(long, 'utf16le'))).toBe(long);
    expect(textOf(new Uint8Array())).toBe('');
  });
});
