import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isRefusedMaterial, judgedMaterialNames, judgedMaterials } from '../judgedMaterials.ts';
import { judgeMaterial } from './judgeMaterial.ts';
import { findMaterial, materialClasses } from './materials.ts';
import { materialWords } from './materialWords.ts';
import { otherLanguages } from './names/otherLanguages.ts';

const decision = (text: string) => judgeMaterial(text).decision;
const entryOf = (text: string) => {
  const judged = judgeMaterial(text);
  return 'judged' in judged ? judged.judged : judged.decision;
};

// The decisions themselves come from the list's own sources; see the words of judged materials.
describe('judging a material by its name', () => {
  it.each([
    ['P.V.C.', 'pvc'],
    ['pvc foam board 3 mm', 'pvc'],
    ['uPVC', 'pvc'],
    ['faux-leather', 'pvc'],
    ['acrylic, or maybe vinyl', 'pvc'],
    ['abs sheet', 'abs'],
    ['Lexan 2mm', 'polycarbonate'],
    ['poly carbonate', 'polycarbonate'],
    ['POLY-CARBONATE', 'polycarbonate'],
    ['polycarbonte', 'polycarbonate'],
    ['polycarbonatesheet', 'polycarbonate'],
    ['2mm PC', 'polycarbonate'],
    ['3 PC', 'polycarbonate'],
    ['unknown plastic', 'unidentified-plastic'],
    ['craft foam', 'unidentified-plastic'],
    ['stryofoam', 'polystyrene-foam'],
    ['polystyrene foam', 'polystyrene-foam'],
    ['polystyrene 2 mm', 'solid-polystyrene'],
    ['PU leather', 'polyurethane'],
    ['FR4', 'epoxy-laminate'],
    ['chrome-tanned leather', 'chrome-leather'],
    ['fire-rated MDF', 'fire-retarded'],
    ['pressure treated pine', 'treated-wood'],
    ['painted plywood', 'painted-stock'],
    ['Stainless steel', 'bare-metal'],
    ['plexiglass or glass', 'glass'],
    ['rubber', 'unknown-rubber'],
    ['phenolic resin sheet', 'phenolic-board'],
  ])('refuses %s as %s', (text, material) => {
    expect(decision(text)).toBe('refuse');
    expect(entryOf(text)).toBe(material);
  });

  it.each([
    ['3 mm birch ply', 'glued-plywood'],
    ['5 pc birch ply', 'glued-plywood'],
    ['phenolic-glued plywood', 'glued-plywood'],
    ['MDF', 'mdf-board'],
    ['Plexiglass', 'acrylic-sheet'],
    ['mirrored acrylic', 'mirrored-acrylic'],
    ['PVC-free acrylic', 'acrylic-sheet'],
    ['acrylic (not PVC)', 'acrylic-sheet'],
    ['veg-tan leather 2 mm', 'veg-tan-leather'],
    ['felt', 'wool'],
    ['acrylic plastic', 'acrylic-sheet'],
    ['cardboard', 'corrugated-board'],
    ['teak', 'tropical-hardwood'],
    ['self-adhesive cork', 'self-adhesive'],
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
    ['plastic', 'material-which-plastic'],
    ['white plastic sheet', 'material-which-plastic'],
    ['Kunststoff', 'material-which-plastic'],
    ['PETG', 'material-which-plastic'],
    ['laminated paper', 'material-which-layers'],
    // False friends: neither wool nor acrylic sheet, and no PVC by its own word.
    ['synthetic felt', 'material-which-felt'],
    ['acrylic felt', 'material-which-felt'],
    ['PVC-free', 'material-unknown'],
    ['non-PVC vinyl', 'material-what-instead'],
    ['PVC-freies Kunstleder', 'material-what-instead'],
    ['zorblax', 'material-unknown'],
    ['vinyl-free', 'material-unknown'],
    ['', 'material-unknown'],
  ])('asks about %s', (text, code) => {
    const judged = judgeMaterial(text);
    expect(judged.decision).toBe('unknown');
    expect('problem' in judged && judged.problem.code).toBe(code);
  });

  it('says once what is to be said of a material that is named in several languages', () => {
    const { remarks } = judgeMaterial('plywood, берёзовая фанера, κόντρα πλακέ, 桦木胶合板');
    expect(remarks.map(({ code }) => code)).toEqual(['material-caution']);
  });

  it('says with a refusal what it is of, of which the reason and its source are said', () => {
    const judged = judgeMaterial('vinyl');
    if (judged.decision !== 'refuse') throw new Error('vinyl was not refused');
    expect(judged.problem.code).toBe('material-refused');
    expect(judged.problem.params).toEqual({ text: 'vinyl', judged: 'pvc' });
  });

  it.each(
    judgedMaterialNames.flatMap((name) =>
      judgedMaterials[name].alsoKnownAs.map((also) => [also, name] as const),
    ),
  )('judges "%s" no more mildly than %s', (also, name) => {
    if (isRefusedMaterial(name)) expect(decision(also)).toBe('refuse');
    else expect(['caution', 'unknown', 'refuse']).toContain(decision(also)); // being asked about is stricter than a caution
  });

  const refusedWords = judgedMaterialNames
    .filter(isRefusedMaterial)
    .flatMap((name) => materialWords[name].map(({ term }) => term))
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

describe('names in the languages of those who use it', () => {
  it('have their stars at an end, where they are read: one amid a name would find nothing', () => {
    const names = otherLanguages.flatMap((named) =>
      Object.values(named).flatMap((listed) => listed.split(',').map((name) => name.trim())),
    );
    expect(names.filter((name) => /[^ ]\*.|.\*[^ ]/.test(name))).toEqual([]);
  });

  // From memory; the decisions are those of the list.
  const refused: Readonly<Record<string, readonly string[]>> = {
    pvc: [
      'PVC-Platte 3 mm',
      '3mmPVC',
      'Kunstleder',
      'schwarzes Kunstleder',
      'Kunstlederstoff',
      'similicuir',
      'cuir synthétique',
      'Vinyle adhésif',
      'vinilo',
      'CUERO SINTÉTICO',
      'polipiel',
      'ecopelle',
      'couro sintético',
      'courino',
      'kunstleer',
      'sztuczna skóra',
      'skóra sztuczna',
      'leather, imitation',
      // Two of its letters are Cyrillic.
      'РVС sheet',
      'PCW',
      'ПВХ',
      'лист ПВХ 3мм',
      'винил',
      'экокожа',
      'искусственная кожа',
      'suni deri',
      'SUNİ DERİ',
      '聚氯乙烯板',
      'PVC硬板',
      '人造革',
      '塩ビ板',
      '合成皮革',
      'ＰＶＣ',
      'фейк ПВХ-панель',
      'płyta PCV',
      'Forexplatte 5 mm',
      'eco-leather',
      'cuoio sintetico',
      'piel vegana',
      'eko deri',
      '皮革(人造)',
      '氯乙烯板',
    ],
    abs: ['ABS-Kunststoff', 'АБС-пластик', 'plastique ABS', 'ABS樹脂', 'ABS塑料'],
    polycarbonate: [
      'Polycarbonatplatte',
      'policarbonato',
      'polycarbonaat',
      'poliwęglan',
      'płyta poliwęglanowa',
      'поликарбоната',
      'polikarbonat levha',
      '聚碳酸酯',
      'ポリカーボネート',
      'ﾎﾟﾘｶｰﾎﾞﾈｰﾄ',
    ],
    fluoropolymers: [
      'тефлоновый лист',
      'фторопласт',
      'politetrafluoroetileno',
      '聚四氟乙烯',
      '特氟龙',
      'フッ素樹脂',
      'テフロン',
    ],
    'polystyrene-foam': [
      'Styropor',
      'Styroporplatte',
      'Hartschaumplatte',
      'carton plume',
      'poliestireno expandido',
      'isopor',
      'piepschuim',
      'styropian',
      'пенопласт',
      'пенополистирола',
      'strafor',
      '泡沫板',
      '发泡聚苯乙烯',
      '発泡スチロール',
      'KT板',
      'foam board',
    ],
    'solid-polystyrene': [
      'Polystyrol',
      'Polystyrolplatte',
      'POLISTIRENE',
      'poliestireno',
      'polystyreen',
      'polistyren',
      'полистирол',
      'полистирольный лист',
      'polistiren',
      '聚苯乙烯',
      'ポリスチレン',
    ],
    'carbon-fibre': [
      'Kohlefaserplatte',
      'Carbonfaser',
      'fibre de carbone',
      'fibra de carbono',
      'fibra di carbonio',
      'koolstofvezelplaat',
      'włókno węglowe',
      'углепластика',
      'karbon fiber levha',
      '碳纤维板',
      'カーボンファイバー',
      'カーボン 2mm',
      'Carbonplatte',
      'Carbon-Platte',
      'carbon sheet 1 mm',
    ],
    'epoxy-laminate': [
      'GFK',
      'Glasfaserplatte',
      'Epoxidharz',
      'fibre de verre',
      'fibra de vidrio',
      'vetroresina',
      'fibra de vidro',
      'glasvezelplaat',
      'włókno szklane',
      'żywica epoksydowa',
      'стеклотекстолит',
      'эпоксидная смола',
      'cam elyaf',
      '玻璃纤维',
      '环氧树脂',
      'ガラス繊維',
      'エポキシ',
      'FRP',
      'ガラエポ基板',
    ],
    'chrome-leather': [
      'Chromleder',
      'cuir tanné au chrome',
      'cuero al cromo',
      'cuoio concia al cromo',
      'chroomleer',
      'skóra chromowa',
      'кожа хромового дубления',
      'krom deri',
      '铬鞣皮',
      'クロムなめし革',
      'skóra garbowana chromem',
      'cuir au chrome',
      'wet-blue',
    ],
    'zinc-plated': [
      'verzinktes Blech',
      'acier galvanisé',
      'acero galvanizado',
      'lamiera zincata',
      'aço galvanizado',
      'verzinkt staal',
      'blacha ocynkowana',
      'оцинкованная сталь',
      'galvanizli sac',
      '镀锌板',
      '亜鉛めっき鋼板',
      'оцинковка 0,5',
      'ocynk',
      'coated metal sheet',
    ],
  };
  it.each(
    Object.entries(refused).flatMap(([entry, names]) =>
      names.map((name) => [name, entry] as const),
    ),
  )('refuses %s as %s', (name, entry) => {
    expect(decision(name)).toBe('refuse');
    if (entry !== 'zinc-plated' && name !== 'coated metal sheet') expect(entryOf(name)).toBe(entry);
  });

  it.each([
    ['Kunststoffplatte', 'material-which-plastic'],
    ['plastique', 'material-which-plastic'],
    ['plástico', 'material-which-plastic'],
    ['plastica', 'material-which-plastic'],
    ['tworzywo sztuczne', 'material-which-plastic'],
    ['пластик', 'material-which-plastic'],
    ['塑料板', 'material-which-plastic'],
    ['プラスチック', 'material-which-plastic'],
    ['Leder', 'material-which-leather'],
    ['Rindsleder', 'material-which-leather'],
    ['cuir', 'material-which-leather'],
    ['skóra', 'material-which-leather'],
    ['кожа', 'material-which-leather'],
    ['牛皮', 'material-which-leather'],
    ['革', 'material-which-leather'],
    ['papier plastifié', 'material-which-layers'],
    ['feutre synthétique', 'material-which-felt'],
    ['Acrylfilz', 'material-which-felt'],
    ['sans PVC', 'material-unknown'],
    ['bez PCW', 'material-unknown'],
    ['без ПВХ', 'material-unknown'],
    ['非PVC', 'material-unknown'],
    ['PVCフリー', 'material-unknown'],
    // Chalk held together by polyethylene.
    ['stone paper', 'material-which-plastic'],
    ['Steinpapier', 'material-which-plastic'],
    ['石头纸', 'material-which-plastic'],
  ])('asks about %s', (name, code) => {
    const judged = judgeMaterial(name);
    expect(judged.decision).toBe('unknown');
    expect('problem' in judged && judged.problem.code).toBe(code);
  });

  it.each([
    ['Birkensperrholz 3 mm', 'plywood'],
    ['Pappelsperrholz', 'plywood'],
    ['contreplaqué peuplier', 'plywood'],
    ['contrachapado de abedul', 'plywood'],
    ['compensato di pioppo', 'plywood'],
    ['compensato di acero', 'plywood'],
    ['berken multiplex', 'plywood'],
    ['sklejka brzozowa', 'plywood'],
    ['берёзовая фанера', 'plywood'],
    ['фанеры 4мм', 'plywood'],
    ['huş kontrplak', 'plywood'],
    ['桦木胶合板', 'plywood'],
    ['シナ合板', 'plywood'],
    ['Acrylglas XT', 'acrylic'],
    ['pleksiglas', 'acrylic'],
    ['copper-coloured acrylic', 'acrylic'],
    ['Acryl stahlblau', 'acrylic'],
    ['Acryl, messingfarben', 'acrylic'],
    ['Acryl statt PVC', 'acrylic'],
    ['acrylic instead of polycarbonate', 'acrylic'],
    ['акрил вместо ПВХ', 'acrylic'],
    ['カーボン紙', 'paper'],
    ['Plexiglas klar', 'acrylic'],
    ['оргстекло', 'acrylic'],
    ['亚克力板', 'acrylic'],
    ['有机玻璃', 'acrylic'],
    ['アクリル板', 'acrylic'],
    ['metacrilato', 'acrylic'],
    ['Graupappe', 'card'],
    ['Wellpappe', 'cardboard'],
    ['картон', 'cardboard'],
    ['papelão', 'cardboard'],
    ['牛皮纸', 'paper'],
    ['铜版纸', 'paper'],
    ['pur coton', 'fabric'],
    ['МДФ', 'mdf'],
    ['pflanzlich gegerbtes Leder', 'leather'],
    ['植鞣牛皮', 'leather'],
    ['PVC-freies Papier', 'paper'],
    ['wood', 'hardwood'],
  ])('lets %s pass, with its cautions', (name, id) => {
    expect(['allowed', 'caution']).toContain(decision(name));
    if (id !== 'leather') expect(findMaterial(name)?.id).toBe(id);
  });

  it('never takes the harmless word of one language for a refused one beside it', () => {
    expect(decision('瓦楞纸板镀锌')).toBe('refuse');
    expect(decision('Birkensperrholz mit PVC-Folie')).toBe('refuse');
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
