/** One material that is refused or cautioned, with the reason and who says so. */
export interface JudgedMaterial {
  readonly material: string;
  readonly alsoKnownAs: readonly string[];
  readonly hazards: readonly string[];
  readonly reason: string;
  readonly decision: 'refuse' | 'caution';
  /** Who says so, as a reader may look it up. */
  readonly sources: readonly string[];
  readonly confidence: 'high' | 'medium' | 'low';
  /** For whoever edits this list: where sources disagree, and what not to repeat. Not for the screen. */
  readonly note?: string;
}

/**
 * What is not cut, and what is cut with care, on a small CO2 laser. Data only: the words by which a person's text finds
 * an entry stand in `materialWords.ts`. Trade names serve as search words only.
 */
export const judgedMaterials = [
  {
    material: 'PVC (polyvinyl chloride)',
    alsoKnownAs: [
      'vinyl',
      'faux leather',
      'pleather',
      'artificial leather',
      'PVC foam board',
      'vinyl sticker film',
    ],
    hazards: [
      'hydrogen chloride',
      'benzene and other aromatics',
      'corrosion of optics and motion parts',
    ],
    reason:
      'Gives off hydrogen chloride and chlorinated compounds; corrodes metal and ruins optics.',
    decision: 'refuse',
    sources: [
      "University of Illinois Chicago, 'Approved Materials' laser cutting page (fab.cada.uic.edu)",
      "University of Texas at Austin, School of Architecture, 'Prohibited Laser Cutter Materials' (wikis.utexas.edu)",
      'Kansas State University Libraries, laser safety guide (guides.lib.k-state.edu)',
      'Rockwell et al. 1976, NIOSH Grant final report, as summarised in Proc. Int. Laser Safety Conf. 1990, paper C109 (pubs.aip.org): CO2-laser cutting of PVC gave benzene, toluene, styrene, naphthalene',
    ],
    confidence: 'high',
    note: 'Many pages say "pure chlorine gas"; UIC says HCl, which is what the chemistry of PVC supports. Show "hydrogen chloride".',
  },
  {
    material: 'Unidentified clear or coloured plastic sheet',
    alsoKnownAs: ['unknown plastic', '"looks like acrylic"'],
    hazards: ['may be PVC, polycarbonate or styrene'],
    reason:
      'The University of Texas at Austin warns of shop stock that looks like acrylic but is PVC or styrene. Identify by data sheet before cutting.',
    decision: 'refuse',
    sources: [
      "University of Texas at Austin, School of Architecture, 'Prohibited Laser Cutter Materials' (wikis.utexas.edu)",
    ],
    confidence: 'high',
    note: 'Refuse until identified by the maker data sheet or safety data sheet.',
  },
  {
    material: 'PVDC, chlorinated PE, chlorinated rubber, neoprene',
    alsoKnownAs: ['saran film', 'chloroprene rubber', 'wetsuit foam'],
    hazards: ['hydrogen chloride'],
    reason: 'Contain chlorine.',
    decision: 'refuse',
    sources: [
      'University of Texas at Austin, School of Architecture, \'Prohibited Laser Cutter Materials\' (wikis.utexas.edu) ("materials containing halogens")',
      'No published source; usual advice',
    ],
    confidence: 'medium',
  },
  {
    material: 'PTFE and other fluoropolymers',
    alsoKnownAs: ['Teflon', 'FEP', 'PFA', 'ETFE', 'PVDF', 'fluoroelastomer (FKM)'],
    hazards: ['carbonyl fluoride', 'hydrogen fluoride', 'fluoroform'],
    reason:
      'The University of Texas at Austin lists carbonyl fluoride and fluoroform for PTFE; carbonyl fluoride gives HF with moist air.',
    decision: 'refuse',
    sources: [
      "University of Texas at Austin, School of Architecture, 'Prohibited Laser Cutter Materials' (wikis.utexas.edu)",
      'No published source; usual advice',
    ],
    confidence: 'high',
  },
  {
    material: 'ABS',
    alsoKnownAs: ['acrylonitrile butadiene styrene', 'ABS 3D prints'],
    hazards: ['hydrogen cyanide', 'styrene', 'fire', 'melting'],
    reason: 'Melts rather than vaporises, higher fire risk, cyanide fume.',
    decision: 'refuse',
    sources: [
      "University of Texas at Austin, School of Architecture, 'Prohibited Laser Cutter Materials' (wikis.utexas.edu)",
      'Kansas State University Libraries, laser safety guide (guides.lib.k-state.edu)',
    ],
    confidence: 'high',
  },
  {
    material: 'Polycarbonate over 1 mm',
    alsoKnownAs: ['PC', 'Lexan', 'Makrolon'],
    hazards: ['fire', 'soot', 'discoloured poor edge'],
    reason: 'Absorbs 10.6 um strongly, burns, browns and cuts poorly.',
    decision: 'refuse',
    sources: [
      "University of Illinois Chicago, 'Approved Materials' laser cutting page (fab.cada.uic.edu)",
      "University of Texas at Austin, School of Architecture, 'Prohibited Laser Cutter Materials' (wikis.utexas.edu)",
      'Kansas State University Libraries, laser safety guide (guides.lib.k-state.edu)',
    ],
    confidence: 'high',
    note: 'UT and UIC say it may emit chlorine; ordinary polycarbonate holds no chlorine, so do not repeat that. Under 1 mm: still poor; treat as refuse unless the shop owner overrides.',
  },
  {
    material: 'HDPE',
    alsoKnownAs: ['high-density polyethylene', 'milk-bottle plastic', 'cutting-board plastic'],
    hazards: ['fire', 'melting'],
    reason: 'Melts, goes gooey, catches fire.',
    decision: 'refuse',
    sources: [
      "University of Illinois Chicago, 'Approved Materials' laser cutting page (fab.cada.uic.edu)",
      'Kansas State University Libraries, laser safety guide (guides.lib.k-state.edu)',
      "University of Texas at Austin, School of Architecture, 'Prohibited Laser Cutter Materials' (wikis.utexas.edu)",
    ],
    confidence: 'high',
  },
  {
    material: 'Polystyrene foam',
    alsoKnownAs: ['EPS', 'XPS', 'styrofoam', 'foam-core board', 'foamboard'],
    hazards: ['fire', 'styrene'],
    reason:
      'Catches fire and melts; the University of Illinois Chicago calls it the first cause of laser-cutter fires.',
    decision: 'refuse',
    sources: [
      "University of Illinois Chicago, 'Approved Materials' laser cutting page (fab.cada.uic.edu)",
      "University of Texas at Austin, School of Architecture, 'Prohibited Laser Cutter Materials' (wikis.utexas.edu)",
      'Kansas State University Libraries, laser safety guide (guides.lib.k-state.edu)',
    ],
    confidence: 'high',
  },
  {
    material: 'Solid polystyrene',
    alsoKnownAs: ['HIPS', 'styrene sheet'],
    hazards: ['fire', 'melting', 'styrene'],
    reason: 'Burns and melts; the University of Texas at Austin prohibits styrene.',
    decision: 'refuse',
    sources: [
      "University of Texas at Austin, School of Architecture, 'Prohibited Laser Cutter Materials' (wikis.utexas.edu)",
    ],
    confidence: 'medium',
  },
  {
    material: 'Polypropylene foam',
    alsoKnownAs: ['EPP'],
    hazards: ['fire', 'burning drips'],
    reason: 'As polystyrene foam; melted drops keep burning and set hard.',
    decision: 'refuse',
    sources: [
      "University of Illinois Chicago, 'Approved Materials' laser cutting page (fab.cada.uic.edu)",
      'Kansas State University Libraries, laser safety guide (guides.lib.k-state.edu)',
    ],
    confidence: 'high',
  },
  {
    material: 'Polyurethane foam, rubber or resin',
    alsoKnownAs: ['PU', 'PUR'],
    hazards: ['hydrogen cyanide', 'isocyanates', 'fire'],
    reason: 'The University of Texas at Austin lists hydrogen cyanide; isocyanates as well.',
    decision: 'refuse',
    sources: [
      "University of Texas at Austin, School of Architecture, 'Prohibited Laser Cutter Materials' (wikis.utexas.edu)",
      'No published source; usual advice',
    ],
    confidence: 'high',
  },
  {
    material: 'Epoxy and glass-fibre laminate',
    alsoKnownAs: ['fibreglass', 'GRP', 'FR4', 'G10', 'circuit board', 'cast resin'],
    hazards: ['hydrogen cyanide', 'toxic resin fume', 'glass dust'],
    reason:
      'Glass does not cut with such a laser and the epoxy gives toxic fume. FR4 is also brominated.',
    decision: 'refuse',
    sources: [
      "University of Texas at Austin, School of Architecture, 'Prohibited Laser Cutter Materials' (wikis.utexas.edu)",
      'Kansas State University Libraries, laser safety guide (guides.lib.k-state.edu)',
      'No published source; usual advice',
    ],
    confidence: 'high',
  },
  {
    material: 'Carbon-fibre composite',
    alsoKnownAs: ['CFRP', 'carbon fibre board'],
    hazards: ['hydrogen cyanide', 'resin fume', 'conductive fibre dust'],
    reason: 'The University of Texas at Austin lists hydrogen cyanide and burning.',
    decision: 'refuse',
    sources: [
      "University of Texas at Austin, School of Architecture, 'Prohibited Laser Cutter Materials' (wikis.utexas.edu)",
      'No published source; usual advice',
    ],
    confidence: 'high',
  },
  {
    material: 'Aramid fibre',
    alsoKnownAs: ['Kevlar', 'Nomex', 'aromatic polyamide'],
    hazards: ['hydrogen cyanide', 'benzene'],
    reason: 'hydrogen cyanide and benzene named for laser cutting of aromatic polyamide.',
    decision: 'refuse',
    sources: [
      'ANSI Z136.1 LGAC appendix as repeated on public pages: benzene from PVC, HCN and benzene from aromatic polyamide, fused silica from quartz, heavy metals from etching',
    ],
    confidence: 'medium',
  },
  {
    material: 'Nylon / polyamide and other artificial fibre',
    alsoKnownAs: ['PA', 'spandex', 'viscose', 'acetate cloth'],
    hazards: ['hydrogen cyanide', 'melting'],
    reason: 'The University of Texas at Austin prohibits and lists hydrogen cyanide.',
    decision: 'refuse',
    sources: [
      "University of Texas at Austin, School of Architecture, 'Prohibited Laser Cutter Materials' (wikis.utexas.edu)",
    ],
    confidence: 'medium',
    note: 'Papers cut polyamide sheet in a research setting; small workshop default stays refuse.',
  },
  {
    material: 'Chromium-tanned leather',
    alsoKnownAs: ['chrome leather', 'most soft upholstery leather'],
    hazards: ['chromium (VI) compounds'],
    reason:
      'Heating can form hexavalent chromium. the University of Illinois Chicago permits only vegetable-tanned leather.',
    decision: 'refuse',
    sources: [
      "University of Illinois Chicago, 'Approved Materials' laser cutting page (fab.cada.uic.edu) (allows only vegetable tanned)",
      'No published source; usual advice',
    ],
    confidence: 'medium',
  },
  {
    material: 'Beryllium oxide ceramic',
    alsoKnownAs: ['beryllia', 'BeO'],
    hazards: ['beryllium: chronic lung disease, carcinogen'],
    reason:
      'Fine beryllium dust or fume is highly toxic. OSHA 29 CFR 1910.1024 PEL 0.2 ug/m3 TWA, STEL 2.0 ug/m3.',
    decision: 'refuse',
    sources: ['No published source; usual advice'],
    confidence: 'medium',
  },
  {
    material: 'PVB (polyvinyl butyral)',
    alsoKnownAs: ['laminated-glass interlayer'],
    hazards: ['butyraldehyde, irritant fume, fire'],
    reason: 'The University of Texas at Austin names it in its prohibited list.',
    decision: 'refuse',
    sources: [
      "University of Texas at Austin, School of Architecture, 'Prohibited Laser Cutter Materials' (wikis.utexas.edu)",
    ],
    confidence: 'medium',
    note: 'UT groups PVB with halogen plastics, but PVB holds no halogen; keep the refusal, not that reason.',
  },
  {
    material: 'Halogenated or fire-retarded sheet',
    alsoKnownAs: [
      'brominated FR board',
      'self-extinguishing plastic',
      'fire-rated MDF or foam with halogens',
    ],
    hazards: ['hydrogen bromide', 'hydrogen chloride', 'unknown retardant products'],
    reason: 'The University of Texas at Austin prohibits materials that contain halogens.',
    decision: 'refuse',
    sources: [
      "University of Texas at Austin, School of Architecture, 'Prohibited Laser Cutter Materials' (wikis.utexas.edu)",
      'No published source; usual advice',
    ],
    confidence: 'high',
  },
  {
    material: 'Phenolic resin board',
    alsoKnownAs: [
      'paper-phenolic laminate',
      'fabric-phenolic laminate',
      'bakelite',
      'HPL compact laminate',
    ],
    hazards: ['formaldehyde', 'phenol', 'carbon monoxide'],
    reason: 'Resin-rich board chars and gives formaldehyde and phenol.',
    decision: 'refuse',
    sources: ['No published source; usual advice'],
    confidence: 'medium',
    note: 'Plywood glued with phenolic resin is a caution, not a refusal.',
  },
  {
    material: 'POM / acetal',
    alsoKnownAs: ['Delrin', 'polyoxymethylene'],
    hazards: ['formaldehyde', 'near-invisible flame', 'fire'],
    reason:
      'The University of Texas at Austin: formaldehyde, fire, melts. Burns with a pale flame.',
    decision: 'refuse',
    sources: [
      "University of Texas at Austin, School of Architecture, 'Prohibited Laser Cutter Materials' (wikis.utexas.edu)",
      'No published source; usual advice',
    ],
    confidence: 'high',
    note: 'UT also lists HF for POM; POM holds no fluorine, do not repeat.',
  },
  {
    material: 'Preservative-treated wood (CCA and others)',
    alsoKnownAs: [
      'pressure-treated timber',
      'CCA',
      'chromated copper arsenate',
      'creosoted wood',
      'penta-treated wood',
    ],
    hazards: ['arsenic', 'chromium (VI)', 'dioxins'],
    reason:
      'Smoke and ash of treated wood carry arsenic and other toxics; burning it is illegal in places.',
    decision: 'refuse',
    sources: [
      "Lake County Air Quality Management District (California), 'Burning treated wood' (lcaqmd.net)",
      'Peters H.A. et al. 1984, Seasonal exposure to arsenic from burning CCA-treated wood, JAMA 251(18):2393-2396 (as cited by the district)',
    ],
    confidence: 'high',
  },
  {
    material: 'Painted, powder-coated or lead-painted stock',
    alsoKnownAs: ['old painted wood', 'coated metal'],
    hazards: ['lead and pigment metals', 'unknown resin fume'],
    reason: 'Unknown coating products.',
    decision: 'refuse',
    sources: ['No published source; usual advice'],
    confidence: 'low',
    note: 'Thin known acrylic paint: caution.',
  },
  {
    material: 'Galvanised or zinc-plated metal',
    alsoKnownAs: ['zinc-coated steel'],
    hazards: ['zinc oxide fume (metal fume fever)', 'beam reflection'],
    reason:
      'A workshop CO2 tube does not cut it; the coating can fume and the face reflects. NIOSH zinc oxide REL 5 mg/m3 TWA.',
    decision: 'refuse',
    sources: [
      "University of Texas at Austin, School of Architecture, 'Prohibited Laser Cutter Materials' (wikis.utexas.edu) (cannot cut metal)",
      'No published source; usual advice',
    ],
    confidence: 'medium',
  },
  {
    material: 'Bare metal',
    alsoKnownAs: ['aluminium', 'brass', 'copper', 'mild and stainless steel'],
    hazards: ['beam reflection', 'optics damage'],
    reason: 'The University of Texas at Austin: its CO2 lasers cannot cut metal; risk to optics.',
    decision: 'refuse',
    sources: [
      "University of Texas at Austin, School of Architecture, 'Prohibited Laser Cutter Materials' (wikis.utexas.edu)",
    ],
    confidence: 'high',
  },
  {
    material: 'Celluloid / cellulose nitrate',
    alsoKnownAs: ['nitrocellulose', 'old film', 'ping-pong ball'],
    hazards: ['violent fire'],
    reason: 'Burns explosively.',
    decision: 'refuse',
    sources: ['No published source; usual advice'],
    confidence: 'medium',
  },
  {
    material: 'Asbestos-bearing board',
    alsoKnownAs: ['old cement board', 'old insulation board'],
    hazards: ['asbestos fibre'],
    reason: 'Never cut.',
    decision: 'refuse',
    sources: ['No published source; usual advice'],
    confidence: 'medium',
  },
  {
    material: 'Polyester or polyethylene sheet and cloth',
    alsoKnownAs: ['PET', 'PETG', 'Tyvek', 'fleece'],
    hazards: ['fire', 'melting', 'formaldehyde (as listed by the University of Texas at Austin)'],
    reason:
      'The University of Texas at Austin prohibits; thin PET is cut in industry with extraction (Chan 2016 measured aldehydes).',
    decision: 'caution',
    sources: [
      "University of Texas at Austin, School of Architecture, 'Prohibited Laser Cutter Materials' (wikis.utexas.edu)",
      'Chan et al. 2016, Aerosol Air Qual. Res. 16:2216-2226',
    ],
    confidence: 'medium',
    note: 'Shops under UT-like rules should set refuse.',
  },
  {
    material: 'Rubber and elastomers of unknown type',
    alsoKnownAs: ['rubber stamp sheet of unknown type'],
    hazards: ['carbonyl fluoride and HF if fluorinated', 'HCl if chlorinated', 'soot'],
    reason:
      'The University of Texas at Austin prohibits rubber/elastomer. Only sheet sold as laser-safe with data sheet.',
    decision: 'refuse',
    sources: [
      "University of Texas at Austin, School of Architecture, 'Prohibited Laser Cutter Materials' (wikis.utexas.edu)",
    ],
    confidence: 'medium',
  },
  {
    material: 'Self-adhesive or glue-backed sheet',
    alsoKnownAs: ['sticker stock', 'peel-and-stick cork or veneer'],
    hazards: ['optics fouling', 'may be PVC'],
    reason: 'The University of Texas at Austin prohibits for the optics; backing may be vinyl.',
    decision: 'caution',
    sources: [
      "University of Texas at Austin, School of Architecture, 'Prohibited Laser Cutter Materials' (wikis.utexas.edu)",
    ],
    confidence: 'medium',
  },
  {
    material: 'Wool felt and natural protein fibre',
    alsoKnownAs: ['felt', 'wool cloth'],
    hazards: ['hydrogen cyanide traces', 'odour'],
    reason:
      'The University of Texas at Austin prohibits (hydrogen cyanide); the University of Illinois Chicago allows 100 % wool: sources disagree.',
    decision: 'caution',
    sources: [
      "University of Texas at Austin, School of Architecture, 'Prohibited Laser Cutter Materials' (wikis.utexas.edu)",
      "University of Illinois Chicago, 'Approved Materials' laser cutting page (fab.cada.uic.edu)",
    ],
    confidence: 'medium',
  },
  {
    material: 'Vegetable-tanned leather',
    alsoKnownAs: ['veg-tan'],
    hazards: ['smoke', 'odour'],
    reason: 'Allowed by the University of Illinois Chicago; needs good extraction.',
    decision: 'caution',
    sources: [
      "University of Illinois Chicago, 'Approved Materials' laser cutting page (fab.cada.uic.edu)",
    ],
    confidence: 'medium',
  },
  {
    material: 'MDF',
    alsoKnownAs: ['medium-density fibreboard', 'HDF'],
    hazards: ['formaldehyde', 'carbon monoxide', 'fine smoke'],
    reason:
      'Urea-formaldehyde binder; wood itself also gives formaldehyde, acetaldehyde and acrolein when pyrolysed at 450 C.',
    decision: 'caution',
    sources: [
      "Salem M.Z.M. and Boehm M., 'Understanding of formaldehyde emissions from solid wood: an overview', BioResources (bioresources.cnr.ncsu.edu)",
      'Limits: OSHA 29 CFR 1910.1048 and NIOSH Pocket Guide npgd0294',
    ],
    confidence: 'high',
  },
  {
    material: 'Plywood',
    alsoKnownAs: ['birch ply', 'poplar ply'],
    hazards: ['formaldehyde from glue', 'glow and ember', 'hidden glue or filler pockets'],
    reason: 'Resin glue lines; exterior (phenolic) grades char more.',
    decision: 'caution',
    sources: ['No published source; usual advice', 'No published source; usual practice'],
    confidence: 'medium',
  },
  {
    material: 'Tropical or oily hardwood',
    alsoKnownAs: ['teak', 'rosewood', 'ipe'],
    hazards: ['irritant or sensitising smoke', 'fire'],
    reason: 'The University of Illinois Chicago excludes tropical woods.',
    decision: 'caution',
    sources: [
      "University of Illinois Chicago, 'Approved Materials' laser cutting page (fab.cada.uic.edu)",
    ],
    confidence: 'medium',
  },
  {
    material: 'Acrylic',
    alsoKnownAs: ['PMMA', 'cast acrylic', 'extruded acrylic', 'Perspex', 'Plexiglas'],
    hazards: ['methyl methacrylate vapour', 'flame', 'particles under 100 nm'],
    reason:
      'Main laser plastic; the vapour burns; particles rise in the room after the lid is opened.',
    decision: 'caution',
    sources: [
      "Munoz, Schmidt, Suffet, Tsai 2023, 'Characterization of Emissions from Carbon Dioxide Laser Cutting Acrylic Plastics', J. Chem. Health Saf. doi 10.1021/acs.chas.3c00013",
    ],
    confidence: 'high',
  },
  {
    material: 'Corrugated cardboard',
    alsoKnownAs: ['carton board'],
    hazards: ['fire'],
    reason:
      'Open flutes feed a flame; the University of Virginia calls it the first culprit for fires in its cutters.',
    decision: 'caution',
    sources: ["University of Virginia FabLab, 'Laser Safety' (uva-fablab.notion.site)"],
    confidence: 'high',
  },
  {
    material: 'Melamine-faced board',
    alsoKnownAs: ['white board panel', 'MFC'],
    hazards: ['formaldehyde', 'hydrogen cyanide', 'cyanuric products'],
    reason: 'Nitrogen-rich resin face.',
    decision: 'caution',
    sources: ['No published source; usual advice'],
    confidence: 'low',
  },
  {
    material: 'Mirror-backed acrylic',
    alsoKnownAs: ['mirrored acrylic'],
    hazards: ['reflection from the metal face', 'backing paint fume'],
    reason: 'Cut with the mirror face down.',
    decision: 'caution',
    sources: [
      "University of Illinois Chicago, 'Approved Materials' laser cutting page (fab.cada.uic.edu) (listed as common material)",
      'No published source; usual practice',
    ],
    confidence: 'low',
  },
  {
    material: 'Glass and quartz',
    alsoKnownAs: ['soda glass', 'fused silica'],
    hazards: ['respirable silica', 'cracking'],
    reason:
      'NIOSH found respirable fused silica at ten times 0.05 mg/m3 when cutting quartz with a CO2 laser.',
    decision: 'refuse',
    sources: [
      "NIOSH 1991, 'Airborne emissions produced by the interaction of a carbon dioxide laser with glass, metals, and plastics', Proc. Int. Laser Safety Conf. 1990, NIOSHTIC 00211856 (stacks.cdc.gov)",
    ],
    confidence: 'high',
    note: 'For through-cutting; surface marking is another matter.',
  },
] as const satisfies readonly JudgedMaterial[];

export type JudgedMaterialName = (typeof judgedMaterials)[number]['material'];
