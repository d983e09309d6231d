import { expect, it } from 'vitest';
import { glowsOn } from './glowsOn.ts';

// Common practice, no source.
it.each([
  ['birch plywood', true],
  ['МДФ', true],
  ['cast acrylic', false],
  ['veg-tan leather', false],
  ['zorblax', true],
])('a slow cut in %s glows on: %s', (material, glows) => {
  expect(glowsOn(material)).toBe(glows);
});
