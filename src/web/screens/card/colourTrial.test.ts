import { describe, expect, it } from 'vitest';
import { colourTrialSvg, trialStrips } from './colourTrial.ts';

describe('the colour trial', () => {
  it('has as many layers and colours as strips, all different', () => {
    const drawing = new DOMParser().parseFromString(colourTrialSvg(), 'image/svg+xml');
    expect(drawing.querySelector('parsererror')).toBeNull();
    const strips = [...drawing.querySelectorAll('g')];
    expect(strips).toHaveLength(trialStrips);
    expect(new Set(strips.map((strip) => strip.id)).size).toBe(trialStrips);
    const colours = strips.map((strip) => strip.querySelector('path')?.getAttribute('stroke'));
    expect(new Set(colours).size).toBe(trialStrips);
  });

  it('says its size in mm, so that a control program does not scale it', () => {
    expect(colourTrialSvg()).toMatch(/width="30mm" height="102mm" viewBox="0 0 30 102"/);
  });
});
