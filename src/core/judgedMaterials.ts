/** A material that is refused or cautioned. Its name, why, and who says so stand in the words of each language. */
interface JudgedMaterial {
  readonly decision: 'refuse' | 'caution';
  /** How sure the sources make it. */
  readonly confidence: 'high' | 'medium' | 'low';
  readonly alsoKnownAs: readonly string[];
}

/**
 * What is not cut, and what is cut with care, on a small CO2 laser. One more is a line here, its words for search
 * (`stock/materialWords.ts`) and what is said of it; the compiler asks for both. Trade names serve as search words only.
 */
export const judgedMaterials = {
  pvc: {
    decision: 'refuse',
    confidence: 'high',
    alsoKnownAs: [
      'vinyl',
      'faux leather',
      'pleather',
      'artificial leather',
      'PVC foam board',
      'vinyl sticker film',
    ],
  },
  'unidentified-plastic': {
    decision: 'refuse',
    confidence: 'high',
    alsoKnownAs: ['unknown plastic', '"looks like acrylic"'],
  },
  'chlorinated-plastics': {
    decision: 'refuse',
    confidence: 'medium',
    alsoKnownAs: ['saran film', 'chloroprene rubber', 'wetsuit foam'],
  },
  fluoropolymers: {
    decision: 'refuse',
    confidence: 'high',
    alsoKnownAs: ['Teflon', 'FEP', 'PFA', 'ETFE', 'PVDF', 'fluoroelastomer (FKM)'],
  },
  abs: {
    decision: 'refuse',
    confidence: 'high',
    alsoKnownAs: ['acrylonitrile butadiene styrene', 'ABS 3D prints'],
  },
  polycarbonate: {
    decision: 'refuse',
    confidence: 'high',
    alsoKnownAs: ['PC', 'Lexan', 'Makrolon'],
  },
  hdpe: {
    decision: 'refuse',
    confidence: 'high',
    alsoKnownAs: ['high-density polyethylene', 'milk-bottle plastic', 'cutting-board plastic'],
  },
  'polystyrene-foam': {
    decision: 'refuse',
    confidence: 'high',
    alsoKnownAs: ['EPS', 'XPS', 'styrofoam', 'foam-core board', 'foamboard'],
  },
  'solid-polystyrene': {
    decision: 'refuse',
    confidence: 'medium',
    alsoKnownAs: ['HIPS', 'styrene sheet'],
  },
  'polypropylene-foam': { decision: 'refuse', confidence: 'high', alsoKnownAs: ['EPP'] },
  polyurethane: { decision: 'refuse', confidence: 'high', alsoKnownAs: ['PU', 'PUR'] },
  'epoxy-laminate': {
    decision: 'refuse',
    confidence: 'high',
    alsoKnownAs: ['fibreglass', 'GRP', 'FR4', 'G10', 'circuit board', 'cast resin'],
  },
  'carbon-fibre': {
    decision: 'refuse',
    confidence: 'high',
    alsoKnownAs: ['CFRP', 'carbon fibre board'],
  },
  'aramid-fibre': {
    decision: 'refuse',
    confidence: 'medium',
    alsoKnownAs: ['Kevlar', 'Nomex', 'aromatic polyamide'],
  },
  'artificial-fibre': {
    decision: 'refuse',
    confidence: 'medium',
    alsoKnownAs: ['PA', 'spandex', 'viscose', 'acetate cloth'],
  },
  'chrome-leather': {
    decision: 'refuse',
    confidence: 'medium',
    alsoKnownAs: ['chrome leather', 'most soft upholstery leather'],
  },
  'beryllium-oxide': { decision: 'refuse', confidence: 'medium', alsoKnownAs: ['beryllia', 'BeO'] },
  pvb: { decision: 'refuse', confidence: 'medium', alsoKnownAs: ['laminated-glass interlayer'] },
  'fire-retarded': {
    decision: 'refuse',
    confidence: 'high',
    alsoKnownAs: [
      'brominated FR board',
      'self-extinguishing plastic',
      'fire-rated MDF or foam with halogens',
    ],
  },
  'phenolic-board': {
    decision: 'refuse',
    confidence: 'medium',
    alsoKnownAs: [
      'paper-phenolic laminate',
      'fabric-phenolic laminate',
      'bakelite',
      'HPL compact laminate',
    ],
  },
  acetal: { decision: 'refuse', confidence: 'high', alsoKnownAs: ['Delrin', 'polyoxymethylene'] },
  'treated-wood': {
    decision: 'refuse',
    confidence: 'high',
    alsoKnownAs: [
      'pressure-treated timber',
      'CCA',
      'chromated copper arsenate',
      'creosoted wood',
      'penta-treated wood',
    ],
  },
  'painted-stock': {
    decision: 'refuse',
    confidence: 'low',
    alsoKnownAs: ['old painted wood', 'coated metal'],
  },
  'zinc-plated': { decision: 'refuse', confidence: 'medium', alsoKnownAs: ['zinc-coated steel'] },
  'bare-metal': {
    decision: 'refuse',
    confidence: 'high',
    alsoKnownAs: ['aluminium', 'brass', 'copper', 'mild and stainless steel'],
  },
  celluloid: {
    decision: 'refuse',
    confidence: 'medium',
    alsoKnownAs: ['nitrocellulose', 'old film', 'ping-pong ball'],
  },
  'asbestos-board': {
    decision: 'refuse',
    confidence: 'medium',
    alsoKnownAs: ['old cement board', 'old insulation board'],
  },
  'polyester-polyethylene': {
    decision: 'caution',
    confidence: 'medium',
    alsoKnownAs: ['PET', 'PETG', 'Tyvek', 'fleece'],
  },
  'unknown-rubber': {
    decision: 'refuse',
    confidence: 'medium',
    alsoKnownAs: ['rubber stamp sheet of unknown type'],
  },
  'self-adhesive': {
    decision: 'caution',
    confidence: 'medium',
    alsoKnownAs: ['sticker stock', 'peel-and-stick cork or veneer'],
  },
  wool: { decision: 'caution', confidence: 'medium', alsoKnownAs: ['felt', 'wool cloth'] },
  'veg-tan-leather': { decision: 'caution', confidence: 'medium', alsoKnownAs: ['veg-tan'] },
  'mdf-board': {
    decision: 'caution',
    confidence: 'high',
    alsoKnownAs: ['medium-density fibreboard', 'HDF'],
  },
  'glued-plywood': {
    decision: 'caution',
    confidence: 'medium',
    alsoKnownAs: ['birch ply', 'poplar ply'],
  },
  'tropical-hardwood': {
    decision: 'caution',
    confidence: 'medium',
    alsoKnownAs: ['teak', 'rosewood', 'ipe'],
  },
  'acrylic-sheet': {
    decision: 'caution',
    confidence: 'high',
    alsoKnownAs: ['PMMA', 'cast acrylic', 'extruded acrylic', 'Perspex', 'Plexiglas'],
  },
  'corrugated-board': { decision: 'caution', confidence: 'high', alsoKnownAs: ['carton board'] },
  'melamine-faced': {
    decision: 'caution',
    confidence: 'low',
    alsoKnownAs: ['white board panel', 'MFC'],
  },
  'mirrored-acrylic': { decision: 'caution', confidence: 'low', alsoKnownAs: ['mirrored acrylic'] },
  glass: { decision: 'refuse', confidence: 'high', alsoKnownAs: ['soda glass', 'fused silica'] },
} as const satisfies Readonly<Record<string, JudgedMaterial>>;

export type JudgedMaterialName = keyof typeof judgedMaterials;

type Decided<Decision> = {
  [Name in JudgedMaterialName]: (typeof judgedMaterials)[Name]['decision'] extends Decision
    ? Name
    : never;
}[JudgedMaterialName];

export type RefusedMaterial = Decided<'refuse'>;
export type CautionedMaterial = Decided<'caution'>;

export const isRefusedMaterial = (name: JudgedMaterialName): name is RefusedMaterial =>
  judgedMaterials[name].decision === 'refuse';

export const isCautionedMaterial = (name: JudgedMaterialName): name is CautionedMaterial =>
  !isRefusedMaterial(name);

export const judgedMaterialNames: readonly JudgedMaterialName[] = Object.keys(
  judgedMaterials,
).filter((name): name is JudgedMaterialName => name in judgedMaterials);
