import { describe, expect, it } from 'vitest';
import { sampleEntry } from '../../../test/samples/studies.ts';
import { onlyByAir } from './onlyByAir.ts';

const base = sampleEntry('a');
const withAir = (id: string, air: 'off' | 'pump', speedMmPerS = base.setting.speedMmPerS) =>
  sampleEntry(id, { setting: { ...base.setting, speedMmPerS, air } });

describe('settings that differ only by air', () => {
  it('are found both ways', () => {
    const [off, pump] = [withAir('off', 'off'), withAir('pump', 'pump')];
    expect(onlyByAir(off, [off, pump])).toEqual([pump]);
    expect(onlyByAir(pump, [off, pump])).toEqual([off]);
  });

  it('are not those of another speed, another sheet, or the same air', () => {
    const off = withAir('off', 'off');
    const otherSheet = {
      ...withAir('c', 'pump'),
      holdsFor: { ...base.holdsFor, nominalThicknessMm: 6 },
    };
    expect(onlyByAir(off, [withAir('b', 'pump', 11), otherSheet, withAir('d', 'off')])).toEqual([]);
  });
});
