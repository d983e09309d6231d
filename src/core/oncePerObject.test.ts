import { describe, expect, it } from 'vitest';
import { oncePerObject } from './oncePerObject.ts';

describe('an answer that is made once an object', () => {
  it('is made anew for another object that looks the same, and once where it is undefined', () => {
    const asked: string[] = [];
    const firstOf = oncePerObject(({ name }: { readonly name: string }) => {
      asked.push(name);
      return name[0];
    });
    const [birch, twin, empty] = [{ name: 'birch' }, { name: 'birch' }, { name: '' }];
    expect([birch, birch, twin, empty, empty].map(firstOf)).toEqual([
      'b',
      'b',
      'b',
      undefined,
      undefined,
    ]);
    expect(asked).toEqual(['birch', 'birch', '']);
  });
});
