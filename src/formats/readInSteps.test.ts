import { describe, expect, it } from 'vitest';

import { readInSteps } from './readInSteps.ts';
import { readToolpath } from './readToolpath.ts';

const paths = '<path d="M0 0C1 1 2 2 3 0"/>'.repeat(5000);
const files = {
  svg: `<svg width="9mm" height="9mm" viewBox="0 0 9 9"><g id="a">${paths}</g></svg>`,
  dxf: `0\nSECTION\n2\nENTITIES\n${'0\nCIRCLE\n8\n0\n10\n0\n20\n0\n40\n5\n'.repeat(5000)}0\nENDSEC\n0\nEOF\n`,
  gcode: `G21 G90\nM3 S100\n${'G0 X1\nG1 X5 Y5 F600\nG2 X9 Y9 I2 J2\n'.repeat(5000)}M5\nM2\n`,
};

describe.each(Object.entries(files))('reading %s in steps', (_, text) => {
  it('finds the same as in one go, and says how far it is', async () => {
    const shares: number[] = [];
    const read = await readInSteps(text, {
      afterStep: (share) => {
        shares.push(share);
        return 'go-on';
      },
    });
    expect(read).toEqual(readToolpath(text));
    expect(shares.length).toBeGreaterThan(5);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    for (const share of shares) expect(share >= 0 && share <= 1).toBe(true);
  });

  it('ends when it is told to, wherever it is', async () => {
    for (const after of [1, 3, 5]) {
      let steps = 0;
      const read = await readInSteps(text, {
        afterStep: () => {
          steps += 1;
          return Promise.resolve(steps < after ? 'go-on' : 'stop');
        },
      });
      expect(read).toMatchObject({ ok: false, problem: { code: 'drawing-reading-stopped' } });
      expect(steps).toBe(after);
    }
  });
});
