import type { JudgedMaterialName } from '../judgedMaterials.ts';
import { wordList, type Term } from './wordList.ts';

/**
 * The words by which a person's text finds an entry of `../judgedMaterials.ts`: chemical names, short forms, trade names
 * (search words only) and usual misspellings. Spelled in any case, together or apart. From memory, unconfirmed, where
 * the entry itself does not give them. The compiler asks for every entry.
 */
export const materialWords: Readonly<Record<JudgedMaterialName, readonly Term[]>> = {
  pvc: wordList(`
    eco leather, ecoleather, trovicel, celtec, komacel, pvc, pvc foam, pvc foam board, upvc, pvc-u, cpvc, polyvinyl, polyvinyl chloride, vinyl, vinil, vynil, vynyl, faux
    leather, fake leather, pleather, artificial leather, synthetic leather, imitation
    leather, vegan leather, leatherette, skai, foamex, forex, sintra, komatex, palight
  `),
  'unidentified-plastic': wordList(`
    unknown plastic, unidentified plastic, looks like acrylic, acrylic lookalike, foam, eva, eva foam, polypropylene,
    pp, correx, coroplast, corriboard
  `),
  'chlorinated-plastics': wordList(`
    pvdc, polyvinylidene chloride, chlorinated pe, chlorinated polyethylene, chlorinated
    rubber, chlorinated, neoprene, chloroprene, polychloroprene, saran, wetsuit, hypalon
  `),
  fluoropolymers: wordList(`
    ptfe, teflon, fep, pfa, etfe, pvdf, fkm, viton, fluoroelastomer, fluoropolymer,
    fluorinated, polytetrafluoroethylene
  `),
  abs: wordList(`abs, acrylonitrile butadiene styrene, acrylonitrile`),
  polycarbonate: wordList(`
    polycarbonate, polycarb, pc, lexan, makrolon, macrolon, tuffak
  `),
  hdpe: wordList(`
    hdpe, pehd, high density polyethylene, milk bottle, cutting board plastic, uhmw, uhmwpe
  `),
  'polystyrene-foam': wordList(`
    polystyrene foam, styrene foam, eps, xps, styrofoam, expanded polystyrene, extruded
    polystyrene, foam core, foam core board, foamcore, foamboard, foam board, depron, kapa
  `),
  'solid-polystyrene': wordList(
    `styrene acrylonitrile, polystyrene, hips, styrene, stirene, styrene sheet, ps sheet`,
  ),
  'polypropylene-foam': wordList(`polypropylene foam, pp foam, epp`),
  polyurethane: wordList(`
    polyurethane, polyurethan, pu, pur, pu foam, pu leather, pu rubber, tpu, urethane
  `),
  'epoxy-laminate': wordList(`
    frp, epoxy, epoxi, glass fibre, glass fiber, fibreglass, fiberglass, grp, gfrp, fr4, g10,
    circuit board, pcb, cast resin, resin, polyester resin, glass filled
  `),
  'carbon-fibre': wordList(`
    carbon plate, carbon sheet, carbon panel, prepreg, carbon fibre, carbon fiber, carbon composite, cfrp, cfk, carbonfibre, carbonfiber
  `),
  'aramid-fibre': wordList(`aramid, kevlar, nomex, twaron, aromatic polyamide`),
  'artificial-fibre': wordList(`
    nylon, polyamide, pa, pa6, pa12, spandex, elastane, lycra, viscose, rayon, acetate,
    acetate cloth, artificial fibre, synthetic fibre, cordura
  `),
  'chrome-leather': wordList(`
    wet blue, wet blue leather, chrome leather, chromium leather, chrome tanned, chromium tanned, chrome tan, chrome
    tanned leather, chromium tanned leather, upholstery leather, soft leather, nappa,
    garment leather
  `),
  'beryllium-oxide': wordList(`beryllium, beryllia, beo, beryllium oxide`),
  pvb: wordList(`
    pvb, polyvinyl butyral, laminated glass, laminated glass interlayer, safety glass
  `),
  'fire-retarded': wordList(`
    halogenated, brominated, fire retardant, fire retarded, flame retardant, flame retarded,
    fire rated, fireproof, self extinguishing, fr mdf, fr board, fr ply, fr plywood, fr foam
  `),
  'phenolic-board': wordList(`
    phenolic, phenolic resin, phenolic board, phenolic sheet, paper phenolic, paper phenolic
    laminate, fabric phenolic laminate, bakelite, hpl, compact laminate, tufnol, pertinax,
    formica
  `),
  acetal: wordList(`pom, acetal, delrin, polyoxymethylene, polyacetal`),
  'treated-wood': wordList(`
    treated wood, treated timber, treated lumber, treated pine, treated board, treated plywood, treated
    ply, pressure treated, preservative treated, tanalised, tanalized, cca, chromated copper
    arsenate, creosote, creosoted, penta
  `),
  'painted-stock': wordList(`
    painted, lead paint, lead painted, old paint, powder coated, powdercoated, coated metal,
    painted wood
  `),
  'zinc-plated': wordList(`
    galvanised, galvanized, galvanised steel, galvanized steel, coated steel, zinc, zinc plated, zinc coated
  `),
  'bare-metal': wordList(`
    alucobond, aluminium composite, aluminum composite, metal, sheet metal, aluminium, aluminum, brass, copper, steel, mild steel, stainless,
    stainless steel, titanium, bronze, iron, tinplate, pewter, dibond
  `),
  celluloid: wordList(`
    celluloid, cellulose nitrate, nitrocellulose, nitrate film, old film, ping pong ball
  `),
  'asbestos-board': wordList(`asbestos, old cement board, old insulation board`),
  'polyester-polyethylene': wordList(`
    polyester, polyethylene, polythene, pet, petg, pe, ldpe, tyvek, fleece, mylar
  `),
  'unknown-rubber': wordList(`
    rubber, rubber stamp, elastomer, epdm, nbr, latex, silicone
  `),
  'self-adhesive': wordList(`
    self adhesive, selfadhesive, adhesive backed, glue backed, sticker, sticker stock, peel
    and stick, sticky back
  `),
  wool: wordList(`felt, wool felt, wool, wool cloth, silk`),
  'veg-tan-leather': wordList(`
    veg tan, veg tanned, vegtan, vegetable tan, vegetable tanned, veg tan leather, veg
    tanned leather, vegetable tanned leather, vegetable tan leather
  `),
  'mdf-board': wordList(`
    mdf, hdf, medium density fibreboard, medium density fiberboard, fibreboard, fiberboard,
    hardboard
  `),
  'glued-plywood': wordList(`plywood, ply, multiplex`),
  'tropical-hardwood': wordList(`
    tropical, tropical hardwood, teak, rosewood, ipe, wenge, padauk, purpleheart, ebony,
    iroko, cocobolo, olive wood
  `),
  'acrylic-sheet': wordList(`
    acrylic, pmma, perspex, plexiglas, plexi, acryl, cast acrylic, extruded acrylic
  `),
  'corrugated-board': wordList(`
    corrugated, corrugated card, corrugated cardboard, cardboard, carton, carton board
  `),
  'melamine-faced': wordList(`
    melamine, melamine faced, melamine resin, mfc, white board panel, laminated chipboard
  `),
  'mirrored-acrylic': wordList(`
    mirror acrylic, mirrored acrylic, acrylic mirror, mirror backed acrylic
  `),
  glass: wordList(`
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
export const standsBackForPlywood: ReadonlySet<JudgedMaterialName> = new Set(['phenolic-board']);
