import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mayDo, roles, type LeastRole, type Role } from './role.ts';

const role = fc.constantFrom<Role>(...roles);
const least = fc.constantFrom<LeastRole>('anyone', ...roles);

describe('roles', () => {
  it.each<[Role | undefined, readonly LeastRole[]]>([
    [undefined, ['anyone']],
    ['reads-and-counts', ['anyone', 'reads-and-counts']],
    ['decides', ['anyone', 'reads-and-counts', 'decides']],
    ['runs-the-place', ['anyone', 'reads-and-counts', 'decides', 'runs-the-place']],
  ])('%s may do what takes %j', (who, may) => {
    const all = ['anyone', ...roles] as const;
    expect(all.filter((one) => mayDo(who, one))).toEqual(may);
  });

  it('rise: what a lower one may, a higher one may too', () => {
    fc.assert(
      fc.property(role, role, least, (one, other, taken) => {
        const [low, high] = mayDo(other, one) ? [one, other] : [other, one];
        expect(mayDo(low, taken) && !mayDo(high, taken)).toBe(false);
      }),
    );
  });
});
