import type { Danger, HeldTo } from './danger.ts';

/** Comb and slot cards: the same limits by another door. All is cut with one setting, and their words are scored. */

const machine = { maxPowerPct: 70, speedRangeMmPerS: [1, 100] };
/** Reaches its rated 24 mA at 59.7 % on a straight line through the readings. */
const tube = {
  ratedCurrentMa: 24,
  tubePoints: [
    { powerPct: 10, currentMa: 3 },
    { powerPct: 60, currentMa: 24.12 },
  ],
};
const setting = { powerPct: 34, speedMmPerS: 14 };
const comb = { kind: 'comb', pieceMm: [300, 200] } as const;
const slots = { kind: 'slots', kerfMm: 0.2 } as const;

const kerf = (change: object = {}, on: object = {}): object => ({
  version: 1,
  material: 'plywood',
  thicknessMm: 3.1,
  card: comb,
  setting,
  machine: { ...machine, ...on },
  ...change,
});

const within: HeldTo = { mostPowerPct: 70, speedsMmPerS: [1, 100] };

const kerfRefused = (
  what: string,
  refused: Extract<Danger['then'], { readonly refused: unknown }>['refused'],
  ask: object,
): Danger => ({ what, door: 'kerf', ask, then: { refused } });
const kerfMade = (what: string, ask: object, made: HeldTo): Danger => ({
  what,
  door: 'kerf',
  ask,
  then: { made },
});

const airOff = 'Air off: flames stand';
const neverLeave = 'Never leave the machine';

/** Each is asked of a comb card and of a slot card. */
const ofBoth = (card: typeof comb | typeof slots): readonly Danger[] => [
  kerfMade('a plain one keeps within every limit, with its cautions', kerf({ card }), {
    ...within,
    mostTimes: 3,
    mostPowerPct: 34,
    cautions: [neverLeave, 'CO2 extinguisher', 'Before the cut: cooling water'],
  }),
  kerfRefused('of PVC', 'material-refused', kerf({ card, material: 'PVC sheet' })),
  kerfRefused(
    'of PVC, whatever a person has looked at',
    'material-refused',
    kerf({ card, material: 'ПВХ', materialKnown: true }),
  ),
  kerfRefused(
    'of a plastic that is not named',
    'material-which-plastic',
    kerf({ card, material: 'Kunststoff' }),
  ),
  kerfRefused(
    'of leather without its tannage',
    'material-which-leather',
    kerf({ card, material: 'leather' }),
  ),
  kerfRefused('of nothing known', 'material-unknown', kerf({ card, material: 'zorblax' })),
  kerfMade(
    'of nothing known, once a person has looked: the question stands in what is made',
    kerf({ card, material: 'zorblax', materialKnown: true }),
    { ...within, cautions: ['zorblax', neverLeave] },
  ),
  kerfMade('of cardboard: its fire line', kerf({ card, material: 'cardboard' }), {
    ...within,
    cautions: ['flame', neverLeave],
  }),
  kerfRefused(
    'above the machine’s limit',
    'fires-above-machine',
    kerf({ card, setting: { powerPct: 71, speedMmPerS: 30 } }),
  ),
  kerfRefused(
    'above rated current',
    'fires-above-rated',
    kerf({ card, setting: { powerPct: 65, speedMmPerS: 30 } }, tube),
  ),
  kerfRefused(
    'words above the machine’s limit',
    'fires-above-machine',
    kerf({ card, scoring: { powerPct: 95, speedMmPerS: 100 } }),
  ),
  kerfRefused(
    'words above rated current',
    'fires-above-rated',
    kerf({ card, scoring: { powerPct: 65, speedMmPerS: 100 } }, tube),
  ),
  kerfRefused(
    'words that would cut',
    'fires-would-cut',
    kerf({ card, scoring: { powerPct: 14, speedMmPerS: 9 } }),
  ),
  {
    ...kerfRefused(
      'fifty passes of its words',
      'fires-would-cut',
      kerf({ card, scoring: { powerPct: 14, speedMmPerS: 90, passes: 50 } }),
    ),
    // An address has no place for passes of words.
    only: 'command-line',
  },
  kerfRefused(
    'many times the line energy',
    'fires-above-ceiling',
    kerf({ card, setting: { powerPct: 34, speedMmPerS: 1 } }),
  ),
  kerfRefused(
    'many times the line energy by passes',
    'fires-above-ceiling',
    kerf({ card, setting: { ...setting, passes: 20 } }),
  ),
  kerfRefused(
    'slower than the machine goes',
    'fires-beyond-speeds',
    kerf({ card, setting: { powerPct: 5, speedMmPerS: 0.5 } }),
  ),
  kerfRefused(
    'faster than the machine goes',
    'fires-beyond-speeds',
    kerf({ card, setting: { powerPct: 34, speedMmPerS: 840 } }),
  ),
  kerfRefused(
    'more power in corners than on the straight',
    'file-value-refused',
    kerf({ card, setting: { ...setting, minPowerPct: 60 } }),
  ),
  kerfRefused(
    'no power',
    'file-value-not-above',
    kerf({ card, setting: { powerPct: 0, speedMmPerS: 14 } }),
  ),
  kerfMade(
    'with the air off: its fire caution',
    kerf({ card, setting: { ...setting, air: 'off' } }),
    {
      ...within,
      cautions: [airOff, neverLeave],
    },
  ),
  {
    ...kerfMade(
      'with the air off for its words alone: its fire caution',
      kerf({ card, scoring: { powerPct: 8, speedMmPerS: 90, air: 'off' } }),
      { ...within, cautions: [airOff, neverLeave] },
    ),
    // An address has no place for the air of words.
    only: 'command-line',
  },
  kerfMade(
    'very slow through thick wood: its own caution',
    kerf(
      {
        card: 'pieceMm' in card ? { ...card, pieceMm: [600, 400], places: 1 } : card,
        thicknessMm: 8,
        setting: { powerPct: 60, speedMmPerS: 3 },
      },
      { nominalW: 60 },
    ),
    { ...within, cautions: ['Very slow through thick sheet', neverLeave] },
  ),
  kerfRefused(
    'of paper',
    'fires-above-ceiling',
    // Of paper of 0.1 mm no slot can be drawn.
    card.kind === 'slots'
      ? kerf({ card: { ...card, kerfMm: 0.05 }, material: 'paper', thicknessMm: 0.3 })
      : kerf({ card, material: 'paper', thicknessMm: 0.1 }),
  ),
  kerfRefused(
    'of felt of 0.3 mm, whose words would be cut out',
    'fires-would-cut',
    kerf({
      card,
      material: 'wool felt',
      thicknessMm: 0.3,
      setting: { powerPct: 34, speedMmPerS: 100 },
    }),
  ),
];

/** What comb and slot cards are asked for that could hurt someone. */
export const kerfDangers: readonly Danger[] = [
  ...ofBoth(comb).map((danger) => ({ ...danger, what: `comb: ${danger.what}` })),
  ...ofBoth(slots).map((danger) => ({ ...danger, what: `slots: ${danger.what}` })),
  kerfRefused(
    'comb: wider than the bed',
    'check-outside-bed',
    kerf({ card: { ...comb, places: 1 } }, { bed: { widthMm: 50, heightMm: 50 } }),
  ),
];
