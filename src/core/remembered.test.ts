import { describe, expect, it } from 'vitest';
import { remembered } from './remembered.ts';

describe('an answer that is remembered', () => {
  it('is made once a text, undefined too, and forgotten beyond so many', () => {
    const asked: string[] = [];
    const length = remembered((text) => {
      asked.push(text);
      return text === '' ? undefined : text.length;
    }, 2);
    expect(['ab', 'ab', '', '', 'abc', 'ab'].map(length)).toEqual([
      2,
      2,
      undefined,
      undefined,
      3,
      2,
    ]);
    expect(asked).toEqual(['ab', '', 'abc', 'ab']);
  });
});
