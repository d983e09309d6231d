import { expect, it } from 'vitest';
import { allMethods, methodNames } from './all.ts';

it('plays the usual four unless others are named', () => {
  expect(methodNames(undefined)).toEqual(['grid-eye', 'grid-ml', 'halving', 'throughcut']);
  expect(methodNames('all')).toHaveLength(allMethods.length);
  expect(methodNames('neyer,entropy')).toEqual(['neyer', 'entropy']);
  expect(methodNames('neyer,nobody')).toBeNull();
});
