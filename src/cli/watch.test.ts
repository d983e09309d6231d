import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { watchByFile } from '../app/sums/watchByFile.ts';
import { parseWatchFile } from '../formats/watchFile.ts';

const page = readFileSync(join(import.meta.dirname, '../../docs/formats/watch.md'), 'utf8');
const example: unknown = JSON.parse(/```json\n([^`]+)```/.exec(page)?.[1] ?? '');
const refusalOf = (over: object): unknown => {
  // By way of JSON, where what is undefined is left out.
  const parsed = parseWatchFile(JSON.parse(JSON.stringify({ ...(example as object), ...over })));
  return parsed.ok ? 'accepted' : parsed.problem.params;
};

describe('a watched setting in a file', () => {
  it('is read and watched as the page on formats shows it', () => {
    const parsed = parseWatchFile(example);
    if (!parsed.ok) throw new Error(JSON.stringify(parsed.problem));
    const watched = watchByFile(parsed.value);
    if (!watched.ok) throw new Error(watched.problem.code);
    const { chart, strips, looks, nextStrip, cause } = watched.value;
    expect(chart.points.map(({ parts, notOut }) => [parts, notOut])).toEqual(
      expect.arrayContaining([
        [200, 2],
        [200, 0],
        [200, 60],
      ]),
    );
    expect(chart.standing).toBe('alarm');
    expect(strips).toHaveLength(1);
    expect(looks).toContain('lens');
    expect(cause).toBeUndefined();
    expect(nextStrip?.[0]?.speedMmPerS).toBe(14.5);
  });

  it('finds what was foreseen by the study where nobody says', () => {
    const parsed = parseWatchFile(
      JSON.parse(JSON.stringify({ ...(example as object), foreseen: undefined })),
    );
    const watched = parsed.ok ? watchByFile(parsed.value) : parsed;
    expect(watched.ok && watched.value.foreseen.outOf100Mean).toBeGreaterThan(60);
  });

  it('refuses what nothing can be said of', () => {
    expect(refusalOf({ study: undefined, strips: [], foreseen: undefined })).not.toBe('accepted');
    expect(refusalOf({ study: undefined })).not.toBe('accepted');
    expect(refusalOf({ version: 2 })).not.toBe('accepted');
    expect(refusalOf({ orders: [{ out: 0 }] })).not.toBe('accepted');
  });
});
