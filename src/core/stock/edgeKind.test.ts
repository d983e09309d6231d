import { expect, it } from 'vitest';
import { edgeKindOf } from './edgeKind.ts';

it('grades edges in the words of the material, and of what it does not know in none', () => {
  expect(['birch ply 3 mm', 'oak', 'mdf', 'cardboard', 'leather'].map(edgeKindOf)).toEqual(
    Array.from({ length: 5 }, () => 'wood'),
  );
  expect(edgeKindOf('clear acrylic')).toBe('acrylic');
  expect([edgeKindOf('rubber'), edgeKindOf('something else')]).toEqual([undefined, undefined]);
});
