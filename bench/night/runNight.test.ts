import { describe, expect, it } from 'vitest';
import type { Figure, NightPart } from './nightPart.ts';
import { runNight } from './runNight.ts';

const partOf = (run: NightPart['run']): NightPart => ({ name: 'one', about: 'for a test', run });
const told = async (...figures: readonly Figure[]): Promise<readonly [string, string]> => {
  const lines: string[] = [];
  const end = await runNight([partOf(() => figures)], (line) => lines.push(line));
  return [end, lines.join('\n')];
};

describe('the night', () => {
  it('is reached where every figure is within its bounds', async () => {
    const [end, lines] = await told(
      { what: 'kept', value: 3, atLeast: 3 },
      { what: 'off', value: 0.2, atMost: 0.2, unit: 'mm' },
      { what: 'told', value: 9 },
    );
    expect(end).toBe('reached');
    expect(lines).toContain('ok    off: 0.2 mm, at most 0.2');
  });

  it.each([
    { what: 'kept', value: 2, atLeast: 3 },
    { what: 'off', value: 0.3, atMost: 0.2 },
    { what: 'lost', value: NaN },
  ])('falls short where one is not: $what', async (figure) => {
    const [end, lines] = await told({ what: 'told', value: 1 }, { ...figure, cases: ['this one'] });
    expect(end).toBe('fell-short');
    expect(lines).toContain('this one');
  });

  it('falls short where a part breaks or measures nothing', async () => {
    expect((await told())[0]).toBe('fell-short');
    const breaks = partOf(() => {
      throw new Error('broken');
    });
    expect(await runNight([breaks], () => undefined)).toBe('fell-short');
  });
});
