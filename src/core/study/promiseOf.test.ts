import { describe, expect, it } from 'vitest';
import { defaultPromise } from '../reading/promise.ts';
import { partLengthOf, promiseOf } from './promiseOf.ts';

const order = (partLengthMm: number) => ({ partLengthMm });

describe('the part that a promise is for', () => {
  it('is not known before a length was asked for or an order was counted', () => {
    expect(partLengthOf({ promise: defaultPromise, tallies: [] })).toBeUndefined();
    expect(promiseOf({ promise: defaultPromise, tallies: [] })).toEqual(defaultPromise);
  });

  it('is that of the first order, and a later order of other parts moves it no more', () => {
    const tallies = [order(240), order(600)];
    expect(promiseOf({ promise: defaultPromise, tallies }).partLengthMm).toBe(240);
  });

  it('is what was asked for, whatever was counted', () => {
    const promise = { ...defaultPromise, partLengthMm: 410 };
    expect(promiseOf({ promise, tallies: [order(240)] }).partLengthMm).toBe(410);
  });
});
