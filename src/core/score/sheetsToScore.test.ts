import { describe, expect, it } from 'vitest';
import {
  sampleEntry,
  sampleMachine,
  sampleStudy,
  sampleTally,
} from '../../../test/samples/studies.ts';
import { omit } from '../omit.ts';
import { sheetsToScore } from './sheetsToScore.ts';

const savedStudy = (over: Parameters<typeof sampleStudy>[1]) =>
  omit(sampleStudy('s1', over), 'machine', 'machineChanges');
const entry = sampleEntry('b1');
const kept = sampleTally('t1', { provenSettingId: 'b1', setting: entry.setting });
const foretold = { outOf100: 98.4, promisedOutOf100: 97, surePct: 95 };
const none = { machines: [sampleMachine()], studies: [], book: [], tallies: [] };

describe('counts that something was promised of', () => {
  it('are sheets of an order by what was foretold, and orders with a kept setting by its promise', () => {
    const ofOrder = sampleTally('t2', {
      orderId: 'o1',
      foretold,
      out: 28,
      hangs: 1,
      stays: 1,
      spoilt: 4,
    });
    const plain = sampleTally('t3');
    const studies = [savedStudy({ tallies: [kept, ofOrder, plain] })];
    const scored = sheetsToScore({ ...none, studies, book: [entry] });
    expect(scored).toHaveLength(2);
    expect(scored[1]).toMatchObject({
      promisedOutOf100: 97,
      foretoldOutOf100: 98.4,
      parts: 30,
      out: 28,
    });
  });

  it('carry the promise of a kept setting to the part that was cut', () => {
    const long = { ...kept, partLengthMm: 2 * entry.promise.partLengthMm };
    const studies = [savedStudy({ tallies: [long] })];
    const [scored] = sheetsToScore({ ...none, studies, book: [entry] });
    expect(scored?.promisedOutOf100).toBeLessThan(entry.promise.outOf100);
  });

  it('leave out another setting than the kept one, the example, and what no book holds', () => {
    const faster = { ...kept, setting: { ...kept.setting, speedMmPerS: 3 } };
    const studies = [savedStudy({ tallies: [faster] })];
    expect(sheetsToScore({ ...none, studies, book: [entry] })).toEqual([]);
    expect(sheetsToScore({ ...none, studies: [savedStudy({ tallies: [kept] })] })).toEqual([]);
    const example = savedStudy({ tallies: [kept], isExample: true });
    expect(sheetsToScore({ ...none, studies: [example], book: [entry] })).toEqual([]);
  });

  it('hold counts of a setting whose sheet is gone too', () => {
    const scored = sheetsToScore({ ...none, book: [entry], tallies: [kept] });
    expect(scored).toHaveLength(1);
    expect(scored[0]?.material).toBe(entry.holdsFor.material.toLowerCase());
  });
});
