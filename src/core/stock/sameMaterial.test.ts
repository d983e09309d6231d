import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sameMaterialAs } from './sameMaterial.ts';

const same = (one: string, other: string): boolean => sameMaterialAs(one)(other);

describe('whether two names are one material', () => {
  // How people write on their shelves: common practice, no source.
  it.each([
    ['birch plywood', '3 mm birch ply'],
    ['birch plywood', 'Plywood, birch, 6mm sheet'],
    ['plywood', 'birch plywood'],
    ['ply', 'multiplex'],
    ['MDF', '3.2 mm mdf board'],
    ['acrylic', 'PMMA'],
    ['cast acrylic', 'acrylic, cast'],
    ['oak', 'oak 4 mm'],
    ['quillwood', 'Quillwood sheet'],
  ])('%s is %s', (one, other) => {
    expect(same(one, other)).toBe(true);
  });

  it.each([
    ['birch plywood', 'poplar plywood'],
    ['cast acrylic', 'extruded acrylic'],
    ['acrylic', 'mirror acrylic'],
    ['plywood', 'MDF'],
    ['birch plywood', 'birch'],
    ['cardboard', 'card'],
    ['MDF', 'melamine faced MDF'],
    ['quillwood', 'quillwood dark'],
    ['3 mm', '4 mm'],
  ])('%s is not %s', (one, other) => {
    expect(same(one, other)).toBe(false);
  });

  it('holds both ways, and of a name with itself where it names anything', () => {
    const word = fc.constantFrom('birch', 'poplar', 'ply', 'plywood', 'acrylic', 'cast', '3 mm');
    const name = fc.array(word, { minLength: 1, maxLength: 4 }).map((words) => words.join(' '));
    fc.assert(
      fc.property(name, name, (one, other) => {
        expect(same(one, other)).toBe(same(other, one));
        if (/[a-z]{3}/.test(one)) expect(same(one, one)).toBe(true);
      }),
    );
  });
});
