import type { Danger, HeldTo } from './danger.ts';

const machine = { maxPowerPct: 70, speedRangeMmPerS: [1, 100] };
/** Reaches its rated 24 mA at 59.7 % on a straight line through the readings. */
const tube = {
  ratedCurrentMa: 24,
  tubePoints: [
    { powerPct: 10, currentMa: 3 },
    { powerPct: 40, currentMa: 15.67 },
    { powerPct: 60, currentMa: 24.12 },
  ],
};
const plywood = { material: 'plywood', thicknessMm: 3.1 };
const scoring = { powerPct: 14, speedMmPerS: 90 };
const trusted = { powerPct: 34, speedMmPerS: 8 };
const card = (change: object = {}, on: object = {}, stock: object = plywood): object => ({
  version: 1,
  study: { version: 1, machine: { ...machine, ...on }, stock },
  powerPct: 34,
  sheetMm: [200, 150],
  ...change,
});
const ramp = (setting: object, on: object = {}): object => ({
  version: 1,
  material: 'birch plywood',
  ramp: { lengthMm: 120, blockMm: 8, nozzleGapMm: 12 },
  setting,
  machine: { ...machine, ...on },
});

const within: HeldTo = {
  mostPowerPct: 70,
  mostTimes: 3,
  mostMarksTimes: 0.5,
  speedsMmPerS: [1, 100],
};
const cardRefused = (
  what: string,
  refused: Extract<Danger['then'], { readonly refused: unknown }>['refused'],
  ask: object,
): Danger => ({
  what,
  door: 'card',
  ask,
  then: { refused },
});
const cardMade = (what: string, ask: object, made: HeldTo): Danger => ({
  what,
  door: 'card',
  ask,
  then: { made },
});
const rampRefused = (what: string, code: string, ask: object): Danger => ({
  what,
  door: 'ramp',
  ask,
  then: { refused: code },
});

const machineLimit: readonly Danger[] = [
  cardMade('a plain card keeps within every limit', card(), within),
  cardMade('so does one with marks, window and outline', card({ scoring, trusted }), within),
  cardRefused('the power asked for', 'card-power-above-machine', card({ powerPct: 71 })),
  cardRefused(
    'a setting said outright',
    'card-power-above-machine',
    card({ rungs: [{ powerPct: 90, speedMmPerS: 60 }] }),
  ),
  cardRefused(
    'one setting said outright among good ones',
    'card-power-above-machine',
    card({
      rungs: [
        { powerPct: 34, speedMmPerS: 14 },
        { powerPct: 71, speedMmPerS: 60 },
      ],
    }),
  ),
  cardRefused(
    'the scoring line',
    'fires-above-machine',
    card({ scoring: { powerPct: 100, speedMmPerS: 100 } }),
  ),
  cardRefused(
    'the slow setting for window and outline',
    'fires-above-machine',
    card({ trusted: { powerPct: 100, speedMmPerS: 30 } }),
  ),
  cardMade('powers that vary stay below it', card({ vary: 'power', powerPct: 60 }), within),
  cardMade(
    'powers that vary with speeds stay below it',
    card({ vary: 'speed-and-power', powerPct: 65, sheetMm: [300, 200] }),
    within,
  ),
  rampRefused(
    'the line of a ramp',
    'ramp-setting-out-of-range',
    ramp({ powerPct: 95, speedMmPerS: 100 }),
  ),
].map((danger) => ({ ...danger, what: `machine limit: ${danger.what}` }));

const ratedCurrent: readonly Danger[] = [
  cardRefused('the power asked for', 'fires-above-rated', card({ powerPct: 65 }, tube)),
  cardRefused(
    'a setting said outright',
    'fires-above-rated',
    card({ rungs: [{ powerPct: 65, speedMmPerS: 40 }] }, tube),
  ),
  cardMade(
    'a setting that a person names as overdrive, said as such',
    card({ rungs: [{ powerPct: 65, speedMmPerS: 40 }], overdrive: true }, tube),
    { ...within, says: ['card-rung-overdrives'] },
  ),
  cardRefused(
    'overdrive of marks is nobody’s choice',
    'fires-above-rated',
    card({ scoring: { powerPct: 65, speedMmPerS: 100 }, overdrive: true }, tube),
  ),
  cardRefused(
    'overdrive of window and outline is nobody’s choice',
    'fires-above-rated',
    card({ trusted: { powerPct: 65, speedMmPerS: 20 }, overdrive: true }, tube),
  ),
  cardRefused(
    'overdrive above the machine’s limit is none',
    'card-power-above-machine',
    card({ rungs: [{ powerPct: 95, speedMmPerS: 60 }], overdrive: true }, tube),
  ),
  cardRefused(
    'the scoring line',
    'fires-above-rated',
    card({ scoring: { powerPct: 65, speedMmPerS: 100 } }, tube),
  ),
  cardRefused(
    'the slow setting for window and outline',
    'fires-above-rated',
    card({ trusted: { powerPct: 65, speedMmPerS: 20 } }, tube),
  ),
  cardMade('powers that vary stay below it', card({ vary: 'power', powerPct: 55 }, tube), {
    ...within,
    mostPowerPct: 59.7,
  }),
  cardRefused(
    'far past the last reading, along the straight line',
    'fires-above-rated',
    card({ powerPct: 65 }, { ...tube, tubePoints: tube.tubePoints.slice(0, 2) }),
  ),
  cardRefused(
    'every setting, where the lowest reading is above it',
    'fires-above-rated',
    card(
      { powerPct: 20 },
      {
        ratedCurrentMa: 3,
        tubePoints: [
          { powerPct: 10, currentMa: 4 },
          { powerPct: 40, currentMa: 15 },
        ],
      },
    ),
  ),
  cardRefused(
    'one reading alone that lies above it',
    'fires-above-rated',
    card({ powerPct: 50 }, { ratedCurrentMa: 20, tubePoints: [{ powerPct: 45, currentMa: 24 }] }),
  ),
  rampRefused(
    'the line of a ramp',
    'fires-above-rated',
    ramp({ powerPct: 65, speedMmPerS: 100 }, tube),
  ),
].map((danger) => ({ ...danger, what: `rated current: ${danger.what}` }));

const lineEnergy: readonly Danger[] = [
  cardRefused(
    'fifty passes of the scoring line at full power and a crawl',
    'fires-above-machine',
    card({ scoring: { powerPct: 100, speedMmPerS: 0.05, passes: 50 } }),
  ),
  cardRefused(
    'fifty passes of a scoring line that is gentle in one',
    'fires-would-cut',
    card({ scoring: { ...scoring, passes: 50 } }),
  ),
  cardRefused(
    'a scoring line ten times slower than meant',
    'fires-would-cut',
    card({ scoring: { ...scoring, speedMmPerS: 9 } }),
  ),
  cardRefused(
    'a scoring line of the power that cuts',
    'fires-would-cut',
    card({ scoring: { powerPct: 60, speedMmPerS: 60 } }),
  ),
  cardRefused(
    'the slow setting ten times slower than meant',
    'fires-beyond-speeds',
    card({ trusted: { ...trusted, speedMmPerS: 0.8 } }),
  ),
  cardRefused(
    'the slow setting four times slower than meant',
    'fires-above-ceiling',
    card({ trusted: { ...trusted, speedMmPerS: 2 } }),
  ),
  cardRefused(
    'the slow setting in many passes',
    'fires-above-ceiling',
    card({ trusted: { ...trusted, passes: 4 } }),
  ),
  cardRefused(
    'the slow setting in three passes',
    'fires-above-ceiling',
    card({ trusted: { ...trusted, passes: 3 } }),
  ),
  cardRefused(
    'corners of a sheet whose words would be cut out',
    'fires-would-cut',
    card({ vary: 'corners' }, {}, { material: 'card', thicknessMm: 0.5 }),
  ),
  cardMade(
    'several passes at the highest power',
    card({ vary: 'passes', powerPct: 70, sheetMm: [300, 200] }),
    // Each is held by the energy of its passes together.
    within,
  ),
  cardRefused(
    'a slow setting for window and outline that a weak tube may need, on a strong one',
    'fires-above-ceiling',
    card({ trusted: { powerPct: 34, speedMmPerS: 4 } }, { nominalW: 130 }),
  ),
  cardMade(
    'the same setting on a weak tube is one that it needs',
    card({ trusted: { powerPct: 34, speedMmPerS: 4 } }, { nominalW: 40 }),
    within,
  ),
  cardMade(
    'slow settings on a weak tube stay what they are',
    card(
      { rungs: [2, 3, 4, 5].map((speedMmPerS) => ({ powerPct: 30, speedMmPerS })) },
      { nominalW: 40 },
    ),
    { ...within, speedsMmPerS: [2, 100] },
  ),
  cardMade(
    'settings said outright are sped up to it',
    card({ rungs: [{ powerPct: 34, speedMmPerS: 1 }] }),
    { ...within, says: ['card-rung-sped-up-to-ceiling'] },
  ),
  cardMade(
    'settings said outright in many passes are sped up to it',
    card({ rungs: [{ powerPct: 34, speedMmPerS: 14, passes: 12 }] }),
    { ...within, mostTimes: 3 * 12, says: ['card-rung-sped-up-to-ceiling'] },
  ),
  cardRefused(
    'so many passes that no speed is fast enough',
    'fires-beyond-speeds',
    card({ rungs: [{ powerPct: 68, speedMmPerS: 14, passes: 20 }] }),
  ),
  cardRefused(
    'a speed to hold that is far too slow',
    'card-nothing-to-vary',
    card({ vary: 'power', speedMmPerS: 1 }),
  ),
  cardMade(
    'corners at a speed that is far too slow',
    card({ vary: 'corners', speedMmPerS: 1, sheetMm: [300, 200] }),
    within,
  ),
  cardRefused(
    'a habit that nobody can have does not open the way to a crawl',
    'fires-above-ceiling',
    {
      ...card({ trusted: { powerPct: 70, speedMmPerS: 0.1 } }, { speedRangeMmPerS: [0.05, 100] }),
      study: {
        version: 1,
        machine: { ...machine, speedRangeMmPerS: [0.05, 100] },
        stock: plywood,
        habit: { powerPct: 70, speedMmPerS: 0.05, comesOut: 'always' },
      },
    },
  ),
  rampRefused(
    'the line of a ramp would cut its strip',
    'fires-would-cut',
    ramp({ powerPct: 60, speedMmPerS: 10 }),
  ),
  rampRefused('the line of a ramp on paper', 'fires-would-cut', {
    ...ramp({ powerPct: 14, speedMmPerS: 60 }),
    material: 'paper',
    thicknessMm: 0.1,
  }),
  rampRefused(
    'the line of a ramp at a crawl',
    'fires-would-cut',
    ramp({ powerPct: 14, speedMmPerS: 1 }),
  ),
].map((danger) => ({ ...danger, what: `line energy: ${danger.what}` }));

const speeds: readonly Danger[] = [
  cardRefused(
    'a setting said outright, too fast',
    'fires-beyond-speeds',
    card({ rungs: [{ powerPct: 34, speedMmPerS: 150 }] }),
  ),
  cardRefused(
    'the scoring line, too fast',
    'fires-beyond-speeds',
    card({ scoring: { powerPct: 14, speedMmPerS: 400 } }),
  ),
  cardRefused(
    'the scoring line, slower than the machine goes',
    'fires-beyond-speeds',
    card({ scoring: { powerPct: 3, speedMmPerS: 0.5 } }),
  ),
  rampRefused(
    'the line of a ramp, too fast',
    'ramp-setting-out-of-range',
    ramp({ powerPct: 14, speedMmPerS: 400 }),
  ),
].map((danger) => ({ ...danger, what: `speeds of the machine: ${danger.what}` }));

const thin = (material: string, thicknessMm: number) => ({ material, thicknessMm });
const thinStock: readonly Danger[] = [
  cardRefused('paper 0.1 mm', 'card-machine-too-strong', card({}, {}, thin('paper', 0.1))),
  cardRefused(
    'card 0.3 mm',
    'card-machine-too-strong',
    card({}, { nominalW: 130 }, thin('card', 0.3)),
  ),
  cardRefused(
    'paper 0.1 mm, the settings said outright',
    'fires-beyond-speeds',
    card({ rungs: [{ powerPct: 34, speedMmPerS: 90 }] }, {}, thin('paper', 0.1)),
  ),
  cardMade(
    'card 0.9 mm on a fast machine gets less power',
    card({ powerPct: 60 }, { speedRangeMmPerS: [1, 300], nominalW: 130 }, thin('card', 0.9)),
    { ...within, speedsMmPerS: [1, 300], says: ['card-power-lowered'] },
  ),
  cardRefused(
    'felt 0.3 mm, whose words would be cut out',
    'card-machine-too-strong',
    card({}, { nominalW: 130 }, thin('wool felt', 0.3)),
  ),
  cardRefused(
    'felt 0.8 mm, whose words would be cut out',
    'fires-would-cut',
    card({}, {}, thin('wool felt', 0.8)),
  ),
].map((danger) => ({ ...danger, what: `thin stock: ${danger.what}` }));

/** A card is asked for or sent whole: through HTTP a request that is neither is told of as one. */
const misread = (atCommandLine: string) => ({
  'command-line': atCommandLine,
  http: 'file-value-not-allowed',
});

/** A slip of the hand that would open a limit if it were passed over. */
const slips: readonly Danger[] = [
  cardRefused(
    'the limit said by a name that nobody reads',
    'file-key-unknown',
    card({}, { maxPower: 20 }),
  ),
  cardRefused(
    'the range of speed the wrong way round',
    'file-value-refused',
    card({}, { speedRangeMmPerS: [100, 1] }),
  ),
  cardRefused('a limit above all there is', 'file-value-too-big', card({}, { maxPowerPct: 140 })),
  cardRefused('a power of −34 %', 'file-value-too-small', card({ powerPct: -34 })),
  cardRefused(
    'a power said as a fraction',
    'card-request-out-of-range',
    card({ rungs: [{ powerPct: 0.34, speedMmPerS: 14 }] }),
  ),
  cardRefused(
    'a speed in mm/min under a name of its own',
    misread('file-key-unknown'),
    card({ trusted: { powerPct: 34, speedMmPerMin: 840 } }),
  ),
  cardRefused(
    'a speed as words, in mm/min',
    misread('file-value-wrong-type'),
    card({ rungs: [{ powerPct: 34, speedMmPerS: '840 mm/min' }] }),
  ),
  cardRefused(
    'a speed in mm/min typed as mm/s',
    'fires-beyond-speeds',
    card({ rungs: [{ powerPct: 34, speedMmPerS: 840 }] }),
  ),
  cardRefused(
    'a speed in in/s typed as mm/s',
    'fires-beyond-speeds',
    card({ trusted: { powerPct: 34, speedMmPerS: 0.55 } }),
  ),
  cardRefused(
    'a thickness of an eighth of an inch typed as mm',
    'fires-would-cut',
    card({}, {}, { material: 'plywood', thicknessMm: 0.125 }),
  ),
  cardRefused(
    'more power in corners than on the straight',
    'file-value-refused',
    card({ trusted: { powerPct: 34, minPowerPct: 95, speedMmPerS: 30 } }),
  ),
  cardRefused(
    'more power in corners than on the straight, of a setting said outright',
    'file-value-refused',
    card({ rungs: [{ powerPct: 20, speedMmPerS: 10, minPowerPct: 60 }] }),
  ),
  cardRefused(
    'a setting of no power',
    'card-request-out-of-range',
    card({ rungs: [{ powerPct: 0, speedMmPerS: 50 }] }),
  ),
  cardRefused(
    'no speed at all',
    'file-value-too-small',
    card({ rungs: [{ powerPct: 30, speedMmPerS: 0 }] }),
  ),
  cardRefused('a tube of 0.04 kW typed as W', 'file-value-too-small', card({}, { nominalW: 0.04 })),
  cardRefused('a tube of a million W', 'file-value-too-big', card({}, { nominalW: 1e6 })),
  cardRefused(
    'a thickness below 0',
    'file-value-too-small',
    card({}, {}, { material: 'plywood', thicknessMm: -3 }),
  ),
  cardRefused(
    'a board of 200 mm',
    'card-request-out-of-range',
    card({}, {}, { material: 'plywood', thicknessMm: 200 }),
  ),
  cardRefused(
    'a line of one’s own behind a line end',
    'file-value-refused',
    card({ gcode: { opening: ['G21\nM3 S1000'] } }),
  ),
  cardRefused(
    'a line of one’s own behind a remark',
    'file-value-refused',
    card({ gcode: { opening: ['(hello) M3 S1000'] } }),
  ),
  cardMade(
    'lines of one’s own in inches, relative, at full S, do not move what follows',
    card({ gcode: { opening: ['G20', 'G91', 'S1000'] } }),
    within,
  ),
  cardRefused(
    'a material with a line end in it',
    'file-value-refused',
    card({}, {}, { material: 'plywood\nM3 S1000', thicknessMm: 3.1 }),
  ),
  cardMade(
    'a material that would close a remark of G-code',
    card({}, {}, { material: 'plywood) M3 S1000 (', thicknessMm: 3.1 }),
    within,
  ),
  cardRefused(
    'no pass at all',
    'file-value-too-small',
    card({ scoring: { ...scoring, passes: 0 } }),
  ),
  cardRefused(
    'a pass and a half',
    misread('file-value-wrong-type'),
    card({ scoring: { ...scoring, passes: 1.5 } }),
  ),
  cardRefused(
    'a line of one’s own that lights the beam',
    'file-value-refused',
    card({ gcode: { opening: ['G21', 'M4 S1000'] } }),
  ),
  cardRefused(
    'a line of one’s own that lights the beam at the end',
    'file-value-refused',
    card({ gcode: { closing: ['m 03 s1000', 'G1 X0 Y0 F60'] } }),
  ),
  cardRefused(
    'a card wider than the bed',
    'card-bigger-than-sheet',
    card({}, { bed: { widthMm: 50, heightMm: 50 } }),
  ),
  cardRefused(
    'readings of the meter in the wrong order',
    'card-tube-readings-odd',
    card(
      { powerPct: 60 },
      {
        ratedCurrentMa: 24,
        tubePoints: [
          { powerPct: 10, currentMa: 20 },
          { powerPct: 40, currentMa: 5 },
        ],
      },
    ),
  ),
  cardRefused(
    'readings in A beside a rating in mA',
    'card-tube-readings-odd',
    card(
      { powerPct: 60 },
      {
        ratedCurrentMa: 24,
        tubePoints: [
          { powerPct: 10, currentMa: 0.003 },
          { powerPct: 40, currentMa: 0.016 },
        ],
      },
    ),
  ),
  cardRefused('a habit that nobody can have', 'card-machine-too-strong', {
    ...card(),
    study: {
      version: 1,
      machine,
      stock: plywood,
      habit: { powerPct: 1, speedMmPerS: 100, comesOut: 'always' },
    },
  }),
  cardRefused('a way round by asking for overdrive', 'card-power-above-machine', {
    ...card({ overdrive: true, powerPct: 95 }),
  }),
].map((danger) => ({ ...danger, what: `slips: ${danger.what}` }));

/** What goes beyond a limit of machine, tube or material, by whichever part of a request. */
export const limitDangers: readonly Danger[] = [
  ...machineLimit,
  ...ratedCurrent,
  ...lineEnergy,
  ...speeds,
  ...thinStock,
  ...slips,
];
