import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { cautionActs } from './shape/caution.ts';
import { cautionsFor, essentialCautions } from './cautions.ts';

const all = cautionActs.flatMap((act) => cautionsFor(act));

describe('cautions', () => {
  it.each(cautionActs)('has an essential one for %s, and shows those first', (act) => {
    const essential = cautionsFor(act).map((caution) => caution.essential);
    expect(essential[0]).toBe(true);
    expect(essential.lastIndexOf(true)).toBe(essential.filter(Boolean).length - 1);
  });

  it('are whole sentences, each code once', () => {
    expect(new Set(all.map(({ code }) => code)).size).toBe(all.length);
    for (const { sentence } of all) expect(sentence).toMatch(/^[A-Z].*[.]$/);
  });

  it('never call anything safe', () => {
    expect(
      all.filter(({ sentence }) => /\bsafe(ly)?\b|harmless|no danger|without risk/i.test(sentence)),
    ).toEqual([]);
  });

  it('say the things that must never be missing', () => {
    const said = (act: (typeof cautionActs)[number]) =>
      cautionsFor(act)
        .map(({ sentence }) => sentence)
        .join(' ');
    expect(said('always')).toMatch(/local rules/);
    expect(said('always')).toMatch(/interlock/);
    expect(said('unattended')).toMatch(/Never leave/);
    expect(said('fire')).toMatch(/CO2 extinguisher/);
    expect(said('beforeCut')).toMatch(/water.*air on.*emergency stop/);
    expect(said('injury')).toMatch(/local rules.*doctor/);
    expect(said('airOff')).toMatch(/flames.*local rules.*extinguisher/);
    expect(said('slowThick')).toMatch(/glows/);
    expect(said('newMaterial')).toMatch(/0\.75 ppm.*0\.016 ppm/);
    expect(said('current')).toMatch(/Danger of death.*licensed electrician/);
    expect(said('timedJobs')).toMatch(/[Dd]isarm the beam/);
  });

  it('keep a source, or the lack of one, beside each', () => {
    const text = readFileSync(join(import.meta.dirname, 'en/cautions.ts'), 'utf8');
    const lines = text.slice(text.indexOf('const always')).split('\n');
    const starts = lines.flatMap((written, at) =>
      /^ {2}(line|essential)\(/.test(written) ? [at] : [],
    );
    expect(starts).toHaveLength(all.length);
    for (const at of starts) expect(lines[at - 1]).toMatch(/^ {2}\/\/ /);
  });

  it('come short where there is room for a few lines only', () => {
    const brief = essentialCautions(['unattended', 'fire', 'always']);
    expect(brief.map(({ code }) => code).slice(0, 2)).toEqual(['never-leave', 'extinguisher']);
    expect(brief.length).toBeLessThanOrEqual(6);
  });
});
