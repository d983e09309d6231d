import type { JudgedMaterialName } from '../../core/judgedMaterials.ts';
import type { JudgedMaterialWords } from '../shape/judgedMaterialWords.ts';

const illinois =
  "University of Illinois Chicago, 'Approved Materials' laser cutting page (fab.cada.uic.edu)";
const texas =
  "University of Texas at Austin, School of Architecture, 'Prohibited Laser Cutter Materials' (wikis.utexas.edu)";
const kansas = 'Kansas State University Libraries, laser safety guide (guides.lib.k-state.edu)';
const advice = 'No published source; usual advice';
const practice = 'No published source; usual practice';

/** What is said of each material that is refused or cautioned. The comments are for whoever edits this: where sources disagree, and what not to repeat. */
export const judgedMaterialWords: Readonly<Record<JudgedMaterialName, JudgedMaterialWords>> = {
  // Many pages say "pure chlorine gas"; UIC says HCl, which is what the chemistry of PVC supports. Show "hydrogen chloride".
  pvc: {
    name: 'PVC (polyvinyl chloride)',
    reason:
      'Gives off hydrogen chloride and chlorinated compounds; corrodes metal and ruins optics.',
    hazards: [
      'hydrogen chloride',
      'benzene and other aromatics',
      'corrosion of optics and motion parts',
    ],
    sources: [
      illinois,
      texas,
      kansas,
      'Rockwell et al. 1976, NIOSH Grant final report, as summarised in Proc. Int. Laser Safety Conf. 1990, paper C109 (pubs.aip.org): CO2-laser cutting of PVC gave benzene, toluene, styrene, naphthalene',
    ],
  },
  // Refuse until identified by the maker data sheet or safety data sheet.
  'unidentified-plastic': {
    name: 'Unidentified clear or coloured plastic sheet',
    reason:
      'The University of Texas at Austin warns of shop stock that looks like acrylic but is PVC or styrene. Identify by data sheet before cutting.',
    hazards: ['may be PVC, polycarbonate or styrene'],
    sources: [texas],
  },
  'chlorinated-plastics': {
    name: 'PVDC, chlorinated PE, chlorinated rubber, neoprene',
    reason: 'Contain chlorine.',
    hazards: ['hydrogen chloride'],
    sources: [`${texas} ("materials containing halogens")`, advice],
  },
  fluoropolymers: {
    name: 'PTFE and other fluoropolymers',
    reason:
      'The University of Texas at Austin lists carbonyl fluoride and fluoroform for PTFE; carbonyl fluoride gives HF with moist air.',
    hazards: ['carbonyl fluoride', 'hydrogen fluoride', 'fluoroform'],
    sources: [texas, advice],
  },
  abs: {
    name: 'ABS',
    reason: 'Melts rather than vaporises, higher fire risk, cyanide fume.',
    hazards: ['hydrogen cyanide', 'styrene', 'fire', 'melting'],
    sources: [texas, kansas],
  },
  // UT and UIC say it may emit chlorine; ordinary polycarbonate holds no chlorine, so do not repeat that. Under 1 mm: still poor; treat as refuse unless the shop owner overrides.
  polycarbonate: {
    name: 'Polycarbonate over 1 mm',
    reason: 'Absorbs 10.6 um strongly, burns, browns and cuts poorly.',
    hazards: ['fire', 'soot', 'discoloured poor edge'],
    sources: [illinois, texas, kansas],
  },
  hdpe: {
    name: 'HDPE',
    reason: 'Melts, goes gooey, catches fire.',
    hazards: ['fire', 'melting'],
    sources: [illinois, kansas, texas],
  },
  'polystyrene-foam': {
    name: 'Polystyrene foam',
    reason:
      'Catches fire and melts; the University of Illinois Chicago calls it the first cause of laser-cutter fires.',
    hazards: ['fire', 'styrene'],
    sources: [illinois, texas, kansas],
  },
  'solid-polystyrene': {
    name: 'Solid polystyrene',
    reason: 'Burns and melts; the University of Texas at Austin prohibits styrene.',
    hazards: ['fire', 'melting', 'styrene'],
    sources: [texas],
  },
  'polypropylene-foam': {
    name: 'Polypropylene foam',
    reason: 'As polystyrene foam; melted drops keep burning and set hard.',
    hazards: ['fire', 'burning drips'],
    sources: [illinois, kansas],
  },
  polyurethane: {
    name: 'Polyurethane foam, rubber or resin',
    reason: 'The University of Texas at Austin lists hydrogen cyanide; isocyanates as well.',
    hazards: ['hydrogen cyanide', 'isocyanates', 'fire'],
    sources: [texas, advice],
  },
  'epoxy-laminate': {
    name: 'Epoxy and glass-fibre laminate',
    reason:
      'Glass does not cut with such a laser and the epoxy gives toxic fume. FR4 is also brominated.',
    hazards: ['hydrogen cyanide', 'toxic resin fume', 'glass dust'],
    sources: [texas, kansas, advice],
  },
  'carbon-fibre': {
    name: 'Carbon-fibre composite',
    reason: 'The University of Texas at Austin lists hydrogen cyanide and burning.',
    hazards: ['hydrogen cyanide', 'resin fume', 'conductive fibre dust'],
    sources: [texas, advice],
  },
  'aramid-fibre': {
    name: 'Aramid fibre',
    reason: 'hydrogen cyanide and benzene named for laser cutting of aromatic polyamide.',
    hazards: ['hydrogen cyanide', 'benzene'],
    sources: [
      'ANSI Z136.1 LGAC appendix as repeated on public pages: benzene from PVC, HCN and benzene from aromatic polyamide, fused silica from quartz, heavy metals from etching',
    ],
  },
  // Papers cut polyamide sheet in a research setting; small workshop default stays refuse.
  'artificial-fibre': {
    name: 'Nylon / polyamide and other artificial fibre',
    reason: 'The University of Texas at Austin prohibits and lists hydrogen cyanide.',
    hazards: ['hydrogen cyanide', 'melting'],
    sources: [texas],
  },
  'chrome-leather': {
    name: 'Chromium-tanned leather',
    reason:
      'Heating can form hexavalent chromium. the University of Illinois Chicago permits only vegetable-tanned leather.',
    hazards: ['chromium (VI) compounds'],
    sources: [`${illinois} (allows only vegetable tanned)`, advice],
  },
  'beryllium-oxide': {
    name: 'Beryllium oxide ceramic',
    reason:
      'Fine beryllium dust or fume is highly toxic. OSHA 29 CFR 1910.1024 PEL 0.2 ug/m3 TWA, STEL 2.0 ug/m3.',
    hazards: ['beryllium: chronic lung disease, carcinogen'],
    sources: [advice],
  },
  // UT groups PVB with halogen plastics, but PVB holds no halogen; keep the refusal, not that reason.
  pvb: {
    name: 'PVB (polyvinyl butyral)',
    reason: 'The University of Texas at Austin names it in its prohibited list.',
    hazards: ['butyraldehyde, irritant fume, fire'],
    sources: [texas],
  },
  'fire-retarded': {
    name: 'Halogenated or fire-retarded sheet',
    reason: 'The University of Texas at Austin prohibits materials that contain halogens.',
    hazards: ['hydrogen bromide', 'hydrogen chloride', 'unknown retardant products'],
    sources: [texas, advice],
  },
  // Plywood glued with phenolic resin is a caution, not a refusal.
  'phenolic-board': {
    name: 'Phenolic resin board',
    reason: 'Resin-rich board chars and gives formaldehyde and phenol.',
    hazards: ['formaldehyde', 'phenol', 'carbon monoxide'],
    sources: [advice],
  },
  // UT also lists HF for POM; POM holds no fluorine, do not repeat.
  acetal: {
    name: 'POM / acetal',
    reason:
      'The University of Texas at Austin: formaldehyde, fire, melts. Burns with a pale flame.',
    hazards: ['formaldehyde', 'near-invisible flame', 'fire'],
    sources: [texas, advice],
  },
  'treated-wood': {
    name: 'Preservative-treated wood (CCA and others)',
    reason:
      'Smoke and ash of treated wood carry arsenic and other toxics; burning it is illegal in places.',
    hazards: ['arsenic', 'chromium (VI)', 'dioxins'],
    sources: [
      "Lake County Air Quality Management District (California), 'Burning treated wood' (lcaqmd.net)",
      'Peters H.A. et al. 1984, Seasonal exposure to arsenic from burning CCA-treated wood, JAMA 251(18):2393-2396 (as cited by the district)',
    ],
  },
  // Thin known acrylic paint: caution.
  'painted-stock': {
    name: 'Painted, powder-coated or lead-painted stock',
    reason: 'Unknown coating products.',
    hazards: ['lead and pigment metals', 'unknown resin fume'],
    sources: [advice],
  },
  'zinc-plated': {
    name: 'Galvanised or zinc-plated metal',
    reason:
      'A workshop CO2 tube does not cut it; the coating can fume and the face reflects. NIOSH zinc oxide REL 5 mg/m3 TWA.',
    hazards: ['zinc oxide fume (metal fume fever)', 'beam reflection'],
    sources: [`${texas} (cannot cut metal)`, advice],
  },
  'bare-metal': {
    name: 'Bare metal',
    reason: 'The University of Texas at Austin: its CO2 lasers cannot cut metal; risk to optics.',
    hazards: ['beam reflection', 'optics damage'],
    sources: [texas],
  },
  celluloid: {
    name: 'Celluloid / cellulose nitrate',
    reason: 'Burns explosively.',
    hazards: ['violent fire'],
    sources: [advice],
  },
  'asbestos-board': {
    name: 'Asbestos-bearing board',
    reason: 'Never cut.',
    hazards: ['asbestos fibre'],
    sources: [advice],
  },
  // Shops under UT-like rules should set refuse.
  'polyester-polyethylene': {
    name: 'Polyester or polyethylene sheet and cloth',
    reason:
      'The University of Texas at Austin prohibits; thin PET is cut in industry with extraction (Chan 2016 measured aldehydes).',
    hazards: ['fire', 'melting', 'formaldehyde (as listed by the University of Texas at Austin)'],
    sources: [texas, 'Chan et al. 2016, Aerosol Air Qual. Res. 16:2216-2226'],
  },
  'unknown-rubber': {
    name: 'Rubber and elastomers of unknown type',
    reason:
      'The University of Texas at Austin prohibits rubber/elastomer. Only sheet sold as laser-safe with data sheet.',
    hazards: ['carbonyl fluoride and HF if fluorinated', 'HCl if chlorinated', 'soot'],
    sources: [texas],
  },
  'self-adhesive': {
    name: 'Self-adhesive or glue-backed sheet',
    reason: 'The University of Texas at Austin prohibits for the optics; backing may be vinyl.',
    hazards: ['optics fouling', 'may be PVC'],
    sources: [texas],
  },
  wool: {
    name: 'Wool felt and natural protein fibre',
    reason:
      'The University of Texas at Austin prohibits (hydrogen cyanide); the University of Illinois Chicago allows 100 % wool: sources disagree.',
    hazards: ['hydrogen cyanide traces', 'odour'],
    sources: [texas, illinois],
  },
  'veg-tan-leather': {
    name: 'Vegetable-tanned leather',
    reason: 'Allowed by the University of Illinois Chicago; needs good extraction.',
    hazards: ['smoke', 'odour'],
    sources: [illinois],
  },
  'mdf-board': {
    name: 'MDF',
    reason:
      'Urea-formaldehyde binder; wood itself also gives formaldehyde, acetaldehyde and acrolein when pyrolysed at 450 C.',
    hazards: ['formaldehyde', 'carbon monoxide', 'fine smoke'],
    sources: [
      "Salem M.Z.M. and Boehm M., 'Understanding of formaldehyde emissions from solid wood: an overview', BioResources (bioresources.cnr.ncsu.edu)",
      'Limits: OSHA 29 CFR 1910.1048 and NIOSH Pocket Guide npgd0294',
    ],
  },
  'glued-plywood': {
    name: 'Plywood',
    reason: 'Resin glue lines; exterior (phenolic) grades char more.',
    hazards: ['formaldehyde from glue', 'glow and ember', 'hidden glue or filler pockets'],
    sources: [advice, practice],
  },
  'tropical-hardwood': {
    name: 'Tropical or oily hardwood',
    reason: 'The University of Illinois Chicago excludes tropical woods.',
    hazards: ['irritant or sensitising smoke', 'fire'],
    sources: [illinois],
  },
  'acrylic-sheet': {
    name: 'Acrylic',
    reason:
      'Main laser plastic; the vapour burns; particles rise in the room after the lid is opened.',
    hazards: ['methyl methacrylate vapour', 'flame', 'particles under 100 nm'],
    sources: [
      "Munoz, Schmidt, Suffet, Tsai 2023, 'Characterization of Emissions from Carbon Dioxide Laser Cutting Acrylic Plastics', J. Chem. Health Saf. doi 10.1021/acs.chas.3c00013",
    ],
  },
  'corrugated-board': {
    name: 'Corrugated cardboard',
    reason:
      'Open flutes feed a flame; the University of Virginia calls it the first culprit for fires in its cutters.',
    hazards: ['fire'],
    sources: ["University of Virginia FabLab, 'Laser Safety' (uva-fablab.notion.site)"],
  },
  'melamine-faced': {
    name: 'Melamine-faced board',
    reason: 'Nitrogen-rich resin face.',
    hazards: ['formaldehyde', 'hydrogen cyanide', 'cyanuric products'],
    sources: [advice],
  },
  'mirrored-acrylic': {
    name: 'Mirror-backed acrylic',
    reason: 'Cut with the mirror face down.',
    hazards: ['reflection from the metal face', 'backing paint fume'],
    sources: [`${illinois} (listed as common material)`, practice],
  },
  // For through-cutting; surface marking is another matter.
  glass: {
    name: 'Glass and quartz',
    reason:
      'NIOSH found respirable fused silica at ten times 0.05 mg/m3 when cutting quartz with a CO2 laser.',
    hazards: ['respirable silica', 'cracking'],
    sources: [
      "NIOSH 1991, 'Airborne emissions produced by the interaction of a carbon dioxide laser with glass, metals, and plastics', Proc. Int. Laser Safety Conf. 1990, NIOSHTIC 00211856 (stacks.cdc.gov)",
    ],
  },
};
