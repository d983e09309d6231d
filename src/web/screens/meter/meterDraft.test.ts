import { describe, expect, it } from 'vitest';
import { emptyDraft, readMeterDraft, readingsOf, withReading } from './meterDraft.ts';

describe('the draft of a metering', () => {
  const draft = [20, 10, 30].reduce(
    (so, powerPct) =>
      withReading(withReading(so, 'up', powerPct, powerPct / 3), 'down', powerPct, powerPct / 3.1),
    emptyDraft,
  );

  it('gives its readings as they were read: up the list, then down', () => {
    expect(readingsOf(draft).map(({ powerPct }) => powerPct)).toEqual([10, 20, 30, 30, 20, 10]);
    expect(readingsOf(draft)[0]).toEqual({ powerPct: 10, currentMa: 10 / 3 });
  });

  it('forgets a reading that was emptied, and only that', () => {
    const less = withReading(draft, 'down', 20, undefined);
    expect(readingsOf(less)).toHaveLength(5);
    expect(less.up).toEqual(draft.up);
    expect(readingsOf(withReading(draft, 'up', 20, 0))).toContainEqual({
      powerPct: 20,
      currentMa: 0,
    });
  });

  it('is read back as it was written; what is damaged is passed over', () => {
    const full = { ...draft, own: [44], waterC: 19 };
    expect(readMeterDraft(JSON.parse(JSON.stringify(full)))).toEqual(full);
    expect(readMeterDraft({ up: { 10: 'a' } })).toBeUndefined();
  });
});
