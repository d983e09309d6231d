import { expect, it } from 'vitest';
import { parseMarkStripRequest } from './markStripRequestFile.ts';

const request = {
  version: 1,
  material: 'birch plywood',
  thicknessMm: 3,
  strip: 'lines',
  machine: { maxPowerPct: 70, speedRangeMmPerS: [1, 300] },
};

it('takes a cut whose passes are left out, and none whose power in the corners is above its power', () => {
  const cut = { powerPct: 30, speedMmPerS: 14 };
  expect(parseMarkStripRequest({ ...request, cut })).toMatchObject({
    ok: true,
    value: { asked: { cut: { ...cut, passes: 1 } } },
  });
  const beyond = { ...cut, minPowerPct: 90 };
  expect(parseMarkStripRequest({ ...request, cut: beyond }).ok).toBe(false);
});
