import type { JudgedMaterialName } from './materialsToRefuse.ts';
import { wordList, type Term } from './wordList.ts';

/**
 * The words by which a person's text finds an entry of `materialsToRefuse.ts`: chemical names, short forms, trade names
 * (search words only) and usual misspellings. Spelled in any case, together or apart. From memory, unconfirmed, where
 * the entry itself does not give them. The compiler asks for every entry.
 */
export const materialWords: Readonly<Record<JudgedMaterialName, readonly Term[]>> = {
  'PVC (polyvinyl chloride)': wordList(`
    eco leather, ecoleather, trovicel, celtec, komacel, pvc, pvc foam, pvc foam board, upvc, pvc-u, cpvc, polyvinyl, polyvinyl chloride, vinyl, vinil, vynil, vynyl, faux
    leather, fake leather, pleather, artificial leather, synthetic leather, imitation
    leather, vegan leather, leatherette, skai, foamex, forex, sintra, komatex, palight
  `),
  'Unidentified clear or coloured plastic sheet': wordList(`
    unknown plastic, unidentified plastic, looks like acrylic, acrylic lookalike, foam, eva, eva foam, polypropylene,
    pp, correx, coroplast, corriboard
  `),
  'PVDC, chlorinated PE, chlorinated rubber, neoprene': wordList(`
    pvdc, polyvinylidene chloride, chlorinated pe, chlorinated polyethylene, chlorinated
    rubber, chlorinated, neoprene, chloroprene, polychloroprene, saran, wetsuit, hypalon
  `),
  'PTFE and other fluoropolymers': wordList(`
    ptfe, teflon, fep, pfa, etfe, pvdf, fkm, viton, fluoroelastomer, fluoropolymer,
    fluorinated, polytetrafluoroethylene
  `),
  ABS: wordList(`abs, acrylonitrile butadiene styrene, acrylonitrile`),
  'Polycarbonate over 1 mm': wordList(`
    polycarbonate, polycarb, pc, lexan, makrolon, macrolon, tuffak
  `),
  HDPE: wordList(`
    hdpe, pehd, high density polyethylene, milk bottle, cutting board plastic, uhmw, uhmwpe
  `),
  'Polystyrene foam': wordList(`
    polystyrene foam, styrene foam, eps, xps, styrofoam, expanded polystyrene, extruded
    polystyrene, foam core, foam core board, foamcore, foamboard, foam board, depron, kapa
  `),
  'Solid polystyrene': wordList(
    `styrene acrylonitrile, polystyrene, hips, styrene, stirene, styrene sheet, ps sheet`,
  ),
  'Polypropylene foam': wordList(`polypropylene foam, pp foam, epp`),
  'Polyurethane foam, rubber or resin': wordList(`
    polyurethane, polyurethan, pu, pur, pu foam, pu leather, pu rubber, tpu, urethane
  `),
  'Epoxy and glass-fibre laminate': wordList(`
    frp, epoxy, epoxi, glass fibre, glass fiber, fibreglass, fiberglass, grp, gfrp, fr4, g10,
    circuit board, pcb, cast resin, resin, polyester resin, glass filled
  `),
  'Carbon-fibre composite': wordList(`
    carbon plate, carbon sheet, carbon panel, prepreg, carbon fibre, carbon fiber, carbon composite, cfrp, cfk, carbonfibre, carbonfiber
  `),
  'Aramid fibre': wordList(`aramid, kevlar, nomex, twaron, aromatic polyamide`),
  'Nylon / polyamide and other artificial fibre': wordList(`
    nylon, polyamide, pa, pa6, pa12, spandex, elastane, lycra, viscose, rayon, acetate,
    acetate cloth, artificial fibre, synthetic fibre, cordura
  `),
  'Chromium-tanned leather': wordList(`
    wet blue, wet blue leather, chrome leather, chromium leather, chrome tanned, chromium tanned, chrome tan, chrome
    tanned leather, chromium tanned leather, upholstery leather, soft leather, nappa,
    garment leather
  `),
  'Beryllium oxide ceramic': wordList(`beryllium, beryllia, beo, beryllium oxide`),
  'PVB (polyvinyl butyral)': wordList(`
    pvb, polyvinyl butyral, laminated glass, laminated glass interlayer, safety glass
  `),
  'Halogenated or fire-retarded sheet': wordList(`
    halogenated, brominated, fire retardant, fire retarded, flame retardant, flame retarded,
    fire rated, fireproof, self extinguishing, fr mdf, fr board, fr ply, fr plywood, fr foam
  `),
  'Phenolic resin board': wordList(`
    phenolic, phenolic resin, phenolic board, phenolic sheet, paper phenolic, paper phenolic
    laminate, fabric phenolic laminate, bakelite, hpl, compact laminate, tufnol, pertinax,
    formica
  `),
  'POM / acetal': wordList(`pom, acetal, delrin, polyoxymethylene, polyacetal`),
  'Preservative-treated wood (CCA and others)': wordList(`
    treated wood, treated timber, treated lumber, treated pine, treated board, treated plywood, treated
    ply, pressure treated, preservative treated, tanalised, tanalized, cca, chromated copper
    arsenate, creosote, creosoted, penta
  `),
  'Painted, powder-coated or lead-painted stock': wordList(`
    painted, lead paint, lead painted, old paint, powder coated, powdercoated, coated metal,
    painted wood
  `),
  'Galvanised or zinc-plated metal': wordList(`
    galvanised, galvanized, galvanised steel, galvanized steel, coated steel, zinc, zinc plated, zinc coated
  `),
  'Bare metal': wordList(`
    alucobond, aluminium composite, aluminum composite, metal, sheet metal, aluminium, aluminum, brass, copper, steel, mild steel, stainless,
    stainless steel, titanium, bronze, iron, tinplate, pewter, dibond
  `),
  'Celluloid / cellulose nitrate': wordList(`
    celluloid, cellulose nitrate, nitrocellulose, nitrate film, old film, ping pong ball
  `),
  'Asbestos-bearing board': wordList(`asbestos, old cement board, old insulation board`),
  'Polyester or polyethylene sheet and cloth': wordList(`
    polyester, polyethylene, polythene, pet, petg, pe, ldpe, tyvek, fleece, mylar
  `),
  'Rubber and elastomers of unknown type': wordList(`
    rubber, rubber stamp, elastomer, epdm, nbr, latex, silicone
  `),
  'Self-adhesive or glue-backed sheet': wordList(`
    self adhesive, selfadhesive, adhesive backed, glue backed, sticker, sticker stock, peel
    and stick, sticky back
  `),
  'Wool felt and natural protein fibre': wordList(`felt, wool felt, wool, wool cloth, silk`),
  'Vegetable-tanned leather': wordList(`
    veg tan, veg tanned, vegtan, vegetable tan, vegetable tanned, veg tan leather, veg
    tanned leather, vegetable tanned leather, vegetable tan leather
  `),
  MDF: wordList(`
    mdf, hdf, medium density fibreboard, medium density fiberboard, fibreboard, fiberboard,
    hardboard
  `),
  Plywood: wordList(`plywood, ply, multiplex`),
  'Tropical or oily hardwood': wordList(`
    tropical, tropical hardwood, teak, rosewood, ipe, wenge, padauk, purpleheart, ebony,
    iroko, cocobolo, olive wood
  `),
  Acrylic: wordList(`
    acrylic, pmma, perspex, plexiglas, plexi, acryl, cast acrylic, extruded acrylic
  `),
  'Corrugated cardboard': wordList(`
    corrugated, corrugated card, corrugated cardboard, cardboard, carton, carton board
  `),
  'Melamine-faced board': wordList(`
    melamine, melamine faced, melamine resin, mfc, white board panel, laminated chipboard
  `),
  'Mirror-backed acrylic': wordList(`
    mirror acrylic, mirrored acrylic, acrylic mirror, mirror backed acrylic
  `),
  'Glass and quartz': wordList(`
    glass, quartz, soda glass, fused silica, silica, mirror glass, glass mirror
  `),
};

/** Words that sound like a refused thing and are none: they outrank whatever they overlap. */
export const innocentWords: readonly Term[] = wordList(`
  heat treated, thermally treated, thermo treated, thermally modified, copper beech, metal
  effect, metal look, metallic look, carbon paper, glass clear, glass look, glass effect, iron
  wood, brass effect, copper effect, steel effect, rubber wood, pet tag, pet tags, copper coloured, copper colored, brass coloured, brass colored,
  bronze coloured, bronze colored, pewter coloured, pewter colored
`);

/** A phenolic glue line does not make plywood a phenolic board: these entries stand back where plywood is named. */
export const standsBackForPlywood: ReadonlySet<JudgedMaterialName> = new Set([
  'Phenolic resin board',
]);
