import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { judgeMaterial } from './judgeMaterial.ts';
import { findMaterial, materialClasses } from './materials.ts';
import { judgedMaterials } from './materialsToRefuse.ts';
import { materialWords } from './materialWords.ts';

const decision = (text: string) => judgeMaterial(text).decision;
const entryOf = (text: string) => {
  const judged = judgeMaterial(text);
  return 'entry' in judged ? judged.entry.material : judged.decision;
};

// The decisions themselves come from the list's own sources; see materialsToRefuse.ts.
describe('judging a material by its name', () => {
  it.each([
    ['P.V.C.', 'PVC (polyvinyl chloride)'],
    ['pvc foam board 3 mm', 'PVC (polyvinyl chloride)'],
    ['uPVC', 'PVC (polyvinyl chloride)'],
    ['faux-leather', 'PVC (polyvinyl chloride)'],
    ['acrylic, or maybe vinyl', 'PVC (polyvinyl chloride)'],
    ['abs sheet', 'ABS'],
    ['Lexan 2mm', 'Polycarbonate over 1 mm'],
    ['poly carbonate', 'Polycarbonate over 1 mm'],
    ['POLY-CARBONATE', 'Polycarbonate over 1 mm'],
    ['polycarbonte', 'Polycarbonate over 1 mm'],
    ['polycarbonatesheet', 'Polycarbonate over 1 mm'],
    ['2mm PC', 'Polycarbonate over 1 mm'],
    ['3 PC', 'Polycarbonate over 1 mm'],
    ['plastic', 'Unidentified clear or coloured plastic sheet'],
    ['white plastic sheet', 'Unidentified clear or coloured plastic sheet'],
    ['craft foam', 'Unidentified clear or coloured plastic sheet'],
    ['stryofoam', 'Polystyrene foam'],
    ['polystyrene foam', 'Polystyrene foam'],
    ['polystyrene 2 mm', 'Solid polystyrene'],
    ['PU leather', 'Polyurethane foam, rubber or resin'],
    ['FR4', 'Epoxy and glass-fibre laminate'],
    ['chrome-tanned leather', 'Chromium-tanned leather'],
    ['fire-rated MDF', 'Halogenated or fire-retarded sheet'],
    ['pressure treated pine', 'Preservative-treated wood (CCA and others)'],
    ['painted plywood', 'Painted, powder-coated or lead-painted stock'],
    ['Stainless steel', 'Bare metal'],
    ['plexiglass or glass', 'Glass and quartz'],
    ['rubber', 'Rubber and elastomers of unknown type'],
    ['phenolic resin sheet', 'Phenolic resin board'],
  ])('refuses %s as %s', (text, material) => {
    expect(decision(text)).toBe('refuse');
    expect(entryOf(text)).toBe(material);
  });

  it.each([
    ['3 mm birch ply', 'Plywood'],
    ['5 pc birch ply', 'Plywood'],
    ['phenolic-glued plywood', 'Plywood'],
    ['MDF', 'MDF'],
    ['Plexiglass', 'Acrylic'],
    ['mirrored acrylic', 'Mirror-backed acrylic'],
    ['PVC-free acrylic', 'Acrylic'],
    ['acrylic (not PVC)', 'Acrylic'],
    ['veg-tan leather 2 mm', 'Vegetable-tanned leather'],
    ['felt', 'Wool felt and natural protein fibre'],
    ['PETG', 'Polyester or polyethylene sheet and cloth'],
    ['cardboard', 'Corrugated cardboard'],
    ['teak', 'Tropical or oily hardwood'],
    ['self-adhesive cork', 'Self-adhesive or glue-backed sheet'],
  ])('cuts %s with care as %s', (text, material) => {
    expect(decision(text)).toBe('caution');
    expect(entryOf(text)).toBe(material);
  });

  it.each([
    'oak',
    'copper beech',
    'heat-treated ash',
    'card',
    'cork 4mm',
    'cotton cloth',
    'vinyl-free paper',
    'rubberwood',
  ])('finds nothing against %s', (text) => {
    expect(decision(text)).toBe('allowed');
  });

  it.each([
    ['leather', 'material-which-leather'],
    ['brown suede', 'material-which-leather'],
    ['chrome-free leather', 'material-which-leather'],
    ['fabric', 'material-which-cloth'],
    ['laser-safe rubber', 'material-rubber-data-sheet'],
    ['zorblax', 'material-unknown'],
    ['vinyl-free', 'material-unknown'],
    ['', 'material-unknown'],
  ])('asks about %s', (text, code) => {
    const judged = judgeMaterial(text);
    expect(judged.decision).toBe('unknown');
    expect('problem' in judged && judged.problem.code).toBe(code);
  });

  it('gives the reason and the source with a refusal', () => {
    const judged = judgeMaterial('vinyl');
    if (judged.decision !== 'refuse') throw new Error('vinyl was not refused');
    expect(judged.problem.code).toBe('material-refused');
    expect(judged.problem.params['reason']).toContain('hydrogen chloride');
    expect(judged.problem.params['source']).toContain('Univ.');
  });

  it.each(
    judgedMaterials.flatMap((entry) => entry.alsoKnownAs.map((also) => [also, entry] as const)),
  )('judges "%s" no more mildly than its entry does', (also, entry) => {
    if (entry.decision === 'refuse') expect(decision(also)).toBe('refuse');
    else expect(['caution', 'refuse']).toContain(decision(also));
  });

  const refusedWords = judgedMaterials
    .filter((entry) => entry.decision === 'refuse')
    .flatMap((entry) => materialWords[entry.material].map(({ term }) => term))
    .filter((word) => word !== 'pc'); // after a bare figure it may count pieces; see above

  it('refuses every search word of a refused entry in any case and with any separators, beside anything', () => {
    const separator = fc.constantFrom(' ', '-', ', ', ' / ', '_', '  ');
    const harmless = fc.constantFrom(
      'birch',
      'sheet',
      'blue',
      '600 x 300',
      'acrylic',
      'oak veneer',
    );
    const written = fc.record({
      word: fc.constantFrom(...refusedWords),
      before: harmless,
      after: harmless,
      by: separator,
      upper: fc.boolean(),
    });
    fc.assert(
      fc.property(written, ({ word, before, after, by, upper }) => {
        const said = word.split(' ').join(by);
        const text = [before, upper ? said.toUpperCase() : said, after].join(by);
        expect(decision(text)).toBe('refuse');
      }),
      { numRuns: 1000 },
    );
  });

  it('answers any text at all', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (text) => {
        expect(decision(text)).toBeTypeOf('string');
      }),
    );
  });
});

describe('the class of a material', () => {
  it.each([
    ['birch ply', 'plywood'],
    ['oak-veneered board with oak veneer', 'veneer'],
    ['Baltic birch plywood 3mm', 'plywood'],
    ['walnut', 'hardwood'],
    ['white card 300 gsm', 'card'],
    ['douglas fir', 'softwood'],
    ['zorblax', undefined],
  ])('of %s is %s', (text, id) => {
    expect(findMaterial(text)?.id).toBe(id);
  });

  it('is found again by its own name', () => {
    for (const { id, name } of materialClasses) expect(findMaterial(name)?.id).toBe(id);
  });
});
