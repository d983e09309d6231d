import { expect, it } from 'vitest';
import { machineChangesAmong } from './machineChangesAmong.ts';

const on = (day: number): string => `2031-05-0${String(day)}T00:00:00.000Z`;
const change = (day: number) => ({ id: String(day), at: on(day), what: 'lens' as const });

it('puts each change of the machine before the first count since it, none from before the setting was kept', () => {
  const points = [2, 4, 6].map((day) => ({ at: on(day) }));
  const among = machineChangesAmong(points, [7, 5, 1, 4].map(change), on(1));
  expect(among.map(({ atPoint, at }) => [atPoint, at])).toEqual([
    [1, on(4)],
    [2, on(5)],
    [3, on(7)],
  ]);
});
