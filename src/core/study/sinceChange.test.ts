import { describe, expect, it } from 'vitest';
import { readCardOf } from '../../../test/samples/earlier.ts';
import { sampleStudy, sampleTally } from '../../../test/samples/studies.ts';
import { compileStudy } from '../cutmodel/compileStudy.ts';
import type { MachineChange } from '../machine/machineChange.ts';
import { answerWithEarlier } from './answerWithEarlier.ts';
import type { Study } from './study.ts';
import { toCutStudy } from './toCutStudy.ts';

const on = (day: number): string => `2031-05-${String(day).padStart(2, '0')}T08:00:00.000Z`;
const changed = (day: number, what: MachineChange['what'] = 'lens'): MachineChange => ({
  id: `c${String(day)}`,
  at: on(day),
  what,
});
const cardOn = (code: string, day: number, seed: number) =>
  readCardOf(code, seed, { batch: 'spring', at: on(day) });
const studyOf = (
  cards: readonly ReturnType<typeof cardOn>[],
  machineChanges: readonly MachineChange[],
  over: Partial<Study> = {},
): Study =>
  sampleStudy('s1', {
    cards: cards.map(({ card }) => card),
    events: cards.flatMap(({ events }) => events),
    ask: { powerPct: 30 },
    machineChanges,
    ...over,
  });
const batchesIn = (study: Study) => [...new Set(toCutStudy(study).cells.map(({ batch }) => batch))];
const answerTo = (study: Study) => answerWithEarlier(toCutStudy(study), study.aim, []);

describe('something changed on the machine', () => {
  const [first, second] = [cardOn('AAA1', 1, 1), cardOn('BBB1', 9, 2)];

  it('is nothing to a study of which all was cut since', () => {
    const since = studyOf([first, second], []);
    expect(toCutStudy({ ...since, machineChanges: [changed(1)] })).toEqual(toCutStudy(since));
    expect(toCutStudy(since).presentBatch).toBeUndefined();
  });

  it('parts what was cut before from what was cut since, each stretch of time for itself', () => {
    const study = studyOf([first, second], [changed(20, 'aligned'), changed(5)], {
      tallies: [
        sampleTally('t1', { at: on(3), batch: 'spring' }),
        sampleTally('t2', { at: on(25) }),
      ],
    });
    const batches = batchesIn(study);
    expect(batches).toHaveLength(2);
    const { tallies, presentBatch, machineChanged } = toCutStudy(study);
    expect(tallies[0]?.batch).toBe(batches[0]);
    expect(tallies[1]?.batch).toBeUndefined();
    expect(batches).not.toContain('spring');
    // The order that was cut since names no batch: it is what the answer is for.
    expect([presentBatch, machineChanged]).toEqual(['', undefined]);
  });

  it('makes the answer one for a batch not seen yet, until something is cut since', () => {
    const before = studyOf([first], []);
    const after = studyOf([first], [changed(5)]);
    expect(toCutStudy(after)).toMatchObject({
      presentBatch: 'spring',
      machineChanged: { what: 'lens', day: '2031-05-05' },
    });
    const { current, model } = compileStudy(toCutStudy(after));
    expect(model.batches).toBe(2);
    expect(model.observations.every(({ batch }) => batch !== current.batch)).toBe(true);
    const [sure, less, again] = [before, after, studyOf([first, second], [changed(5)])].map(
      answerTo,
    );
    const speedOf = (answer: typeof sure) => answer?.recommended?.speedMmPerS ?? 0;
    // Less is known of what the machine cuts now: slower, and wider, but an answer all the same.
    expect(speedOf(less)).toBeGreaterThan(0);
    expect(speedOf(less)).toBeLessThan(speedOf(sure));
    expect(less?.posterior.lnV50At.sd).toBeGreaterThan(1.3 * (sure?.posterior.lnV50At.sd ?? 1));
    expect(less?.warnings.map(({ code }) => code)).toContain('machine-changed-since');
    // A card cut since brings it back.
    expect(speedOf(again)).toBeGreaterThan(speedOf(less));
    expect(again?.warnings.map(({ code }) => code)).not.toContain('machine-changed-since');
  });
});
