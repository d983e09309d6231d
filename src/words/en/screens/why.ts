import type {
  Explanation,
  Learnt,
  LearntName,
  LeftOut,
  NextCellChange,
  PartLeftOut,
  SpeedExplained,
  WhatIfName,
} from '../../../core/explain/explanation.ts';
import { counted, inHundred, listed, powerWords, speedWords, sureWords } from '../terms/figures.ts';

/** A speed as an answer says it, or that there would be none. */
const orNone = (speedMmPerS: number | null): string =>
  speedMmPerS === null ? 'no answer' : speedWords(speedMmPerS);

const percent = (share: number): string => `${share < 1 ? '<\u202f1' : share.toFixed(0)}\u202f%`;

/** How far a speed moves, with its sign. */
const shiftWords = (shiftPct: number | null): string => {
  if (shiftPct === null) return 'no answer';
  if (Math.abs(shiftPct) < 0.05) return 'no change';
  return `${shiftPct > 0 ? '+' : '\u2212'}${Math.abs(shiftPct).toFixed(1)}\u202f%`;
};

/** Below this a shift of the speed is called hardly any. */
const hardlyPct = 0.7;

/** Without what an answer would be lost counts for more than any shift. */
const sizeOf = ({ shiftPct }: LeftOut): number => (shiftPct === null ? 1000 : Math.abs(shiftPct));

const heldBy: Readonly<
  Record<SpeedExplained['heldBy'], (speed: SpeedExplained, promise: string) => string>
> = {
  promise: ({ speedMmPerS, powerPct }, promise) =>
    `${speedWords(speedMmPerS)} is the fastest at which we are sure enough, at ${powerWords(powerPct)}, that ${promise}.`,
  'fastest-out': ({ speedMmPerS, powerPct, holdingMmPerS }) =>
    `Nothing faster than ${speedWords(speedMmPerS)} came out at ${powerWords(powerPct)}, so nothing faster is recommended, though the promise would reach to ${speedWords(Number(holdingMmPerS.toFixed(1)))}.`,
  machine: ({ speedMmPerS }) =>
    `${speedWords(speedMmPerS)} is as fast as the machine goes; the promise would reach further.`,
};

const withoutWords = (left: LeftOut, own: number): string => {
  if (left.speedMmPerS === null) return 'without them there would be no answer';
  return left.speedMmPerS === own
    ? `without them it would stay at ${speedWords(own)}`
    : `without them it would be ${speedWords(left.speedMmPerS)}`;
};

export interface SpeedOfCell {
  readonly powerPct: number;
  readonly speedMmPerS: number;
  readonly grade?: 'out' | 'hangs' | 'stays';
}

/** `15.5 mm/s`, with the power where cells of several were cut. */
const settingOf = (part: PartLeftOut, cells: readonly SpeedOfCell[]): string => {
  const cell = cells[part.cells[0] ?? -1];
  if (cell === undefined) return '';
  const isOnePower = cells.every(({ powerPct }) => powerPct === cell.powerPct);
  const speed = speedWords(cell.speedMmPerS);
  return isOnePower ? speed : `${speed}, ${powerWords(cell.powerPct)}`;
};

/** Settings that are named one by one. */
const mostNamed = 4;

/** The rungs that carry an answer, and those that hardly do. */
const carried = (speed: SpeedExplained, cells: readonly SpeedOfCell[]): readonly string[] => {
  const rungs = [...speed.rungs].sort((a, b) => sizeOf(b) - sizeOf(a));
  const heavy = rungs.filter((rung) => sizeOf(rung) >= hardlyPct).slice(0, 2);
  const light = rungs.filter((rung) => sizeOf(rung) < hardlyPct);
  return [
    ...heavy.map(
      (rung, i) =>
        `${i === 0 ? 'Most rests on' : 'Next,'} the ${counted(rung.cells.length, 'shape')} at ${settingOf(rung, cells)}: ${withoutWords(rung, speed.speedMmPerS)}.`,
    ),
    ...(light.length > 0 ? [lightWords(light, cells)] : []),
  ];
};

const lightWords = (light: readonly PartLeftOut[], cells: readonly SpeedOfCell[]): string =>
  light.length > mostNamed
    ? `The shapes of ${String(light.length)} other settings hardly matter, one setting at a time.`
    : `The shapes at ${[...new Set(light.map((rung) => settingOf(rung, cells)))].join(' or ')} hardly matter.`;

const fell: Readonly<Record<'out' | 'hangs' | 'stays', string>> = {
  out: 'came out',
  hangs: 'hung',
  stays: 'was not through',
};

/** The single cell that counts most. */
const heaviest = (speed: SpeedExplained, cells: readonly SpeedOfCell[]): readonly string[] => {
  let most = -1;
  speed.cells.forEach((left, i) => {
    if (left === null) return;
    const before = speed.cells[most];
    if (before === undefined || before === null || sizeOf(left) > sizeOf(before)) most = i;
  });
  const left = speed.cells[most];
  const cell = cells[most];
  if (left === undefined || left === null || cell?.grade === undefined) return [];
  if (sizeOf(left) < hardlyPct) return ['No single shape moves the answer by itself.'];
  return [
    `The one shape that counts most ${fell[cell.grade]} at ${speedWords(cell.speedMmPerS)}: without it the answer would be ${orNone(left.speedMmPerS)}.`,
  ];
};

/** What one more cell at the recommended speed would do, and the one that would move it most. */
const changes = ({ nextCells, speedMmPerS }: SpeedExplained): readonly string[] => {
  const at = nextCells.find((next) => next.speedMmPerS === speedMmPerS);
  const telling = [...nextCells].sort((a, b) => spreadOf(b) - spreadOf(a))[0];
  return [
    ...(at === undefined ? [] : [oneMore(at, speedMmPerS)]),
    ...(telling === undefined || telling === at ? [] : [oneMore(telling, speedMmPerS)]),
  ];
};

/** Expected size of the change, in ln speed. */
const spreadOf = ({ after }: NextCellChange): number => {
  const mean = Object.values(after).reduce((sum, one) => sum + one.probability * lnOf(one), 0);
  return Object.values(after).reduce(
    (sum, one) => sum + one.probability * (lnOf(one) - mean) ** 2,
    0,
  );
};

const lnOf = ({ speedMmPerS }: { readonly speedMmPerS: number | null }): number =>
  Math.log(speedMmPerS ?? 1);

const oneMore = (next: NextCellChange, own: number): string => {
  const { out, hangs } = next.after;
  const moved = (speedMmPerS: number | null): string => {
    if (speedMmPerS === null) return 'would be lost';
    if (speedMmPerS === own) return `stays at ${speedWords(own)}`;
    return `${speedMmPerS > own ? 'rises' : 'drops'} to ${speedWords(speedMmPerS)}`;
  };
  return `One more shape at ${speedWords(next.speedMmPerS)}: if it comes out (${percent(100 * out.probability)} likely), the answer ${moved(out.speedMmPerS)}; if it hangs, it ${moved(hangs.speedMmPerS)}.`;
};

const whatIfNames = {
  'scatter-twice-as-unsure': 'scatter: prior twice as wide',
  'scatter-half-as-unsure': 'scatter: prior half as wide',
  'scatter-expected-twice': 'scatter: twice as much expected',
  'scatter-expected-half': 'scatter: half as much expected',
  'changeover-twice-as-unsure': 'changeover: prior twice as wide',
  'no-grade-misread': 'no grade misread',
  'thrice-as-many-misread': 'three times as many misread',
  'normal-alone': 'normal link alone',
  'logistic-alone': 'logistic link alone',
  'student3-alone': 'Student t3 link alone (heavy tails)',
} satisfies Record<WhatIfName, string>;

const quantities: Readonly<Record<LearntName, string>> = {
  changeover: 'where half come out',
  scatter: 'how widely shapes scatter',
  'hang-band': 'how wide the hanging band is',
  power: 'how speed goes with power',
  'sheet-scatter': 'how sheets differ',
  flaws: 'how often flaws come',
  thickness: 'how speed goes with thickness',
  passes: 'what another pass brings',
  corners: 'what corner power costs',
};

/** Below this a quantity rests on expectation rather than on what was cut. */
const littleLearntPct = 20;

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

const expectations = ({ learnt, speed, leaning }: Explanation): readonly string[] => {
  const scatter = learnt.find(({ name }) => name === 'scatter');
  const little = learnt.filter(
    ({ name, learntPct }) => learntPct < littleLearntPct && name !== 'scatter' && name !== 'flaws',
  );
  const shift = (name: WhatIfName): number | null | undefined =>
    speed?.whatIf.find((one) => one.name === name)?.speedMmPerS;
  const [twice, half] = [shift('scatter-expected-twice'), shift('scatter-expected-half')];
  return [
    ...(scatter === undefined ? [] : [scatterWords(scatter, leaning !== undefined)]),
    ...(twice === undefined || half === undefined
      ? []
      : [
          `Had we expected twice the scatter, the answer would be ${orNone(twice)}; with half of it, ${orNone(half)}.`,
        ]),
    ...(little.length > 0
      ? [
          `${capital(listed(little.map(({ name }) => quantities[name])))} ${little.length === 1 ? 'rests' : 'rest'} on our expectation, not on your shapes.`,
        ]
      : []),
  ];
};

const scatterWords = ({ learntPct, learntByOwnPct }: Learnt, leans: boolean): string => {
  if (learntPct < littleLearntPct)
    return `How widely shapes scatter rests on our expectation, not on your shapes: they told ${percent(learntPct)} of it.`;
  const byOwn =
    learntByOwnPct === undefined ? '' : ` (this sheet alone ${percent(learntByOwnPct)})`;
  return leans
    ? `Of how widely shapes scatter, shapes told ${percent(learntPct)}${byOwn}; the rest is expectation.`
    : `Of how widely shapes scatter, your shapes told ${percent(learntPct)}; the rest is expectation.`;
};

const leanings = ({ leaning }: Explanation): readonly string[] => {
  if (leaning === undefined) return [];
  const { shapes, withMmPerS, withoutMmPerS, verdict } = leaning;
  if (verdict === undefined || withoutMmPerS === undefined)
    return [
      `It leans on ${counted(shapes, 'shape')} of earlier sheets: with them ${orNone(withMmPerS)}. What this sheet says alone would have taken too long to work out.`,
    ];
  return [
    `It leans on ${counted(shapes, 'shape')} of earlier sheets: with them ${orNone(withMmPerS)}, without them ${orNone(withoutMmPerS)}.`,
    ...(verdict.disagrees
      ? ['This sheet is not what earlier ones let expect: rather do without them.']
      : [
          `This sheet agrees with them so far: it cuts ${differs(verdict.level.ln, 'faster', 'slower')} than they let expect.`,
        ]),
  ];
};

const differs = (ln: number, more: string, less: string): string =>
  `${Math.abs(100 * Math.expm1(ln)).toFixed(0)}\u202f% ${ln >= 0 ? more : less}`;

export interface WhySaid {
  readonly held: string;
  readonly carries: readonly string[];
  readonly changes: readonly string[];
  readonly expectation: readonly string[];
  readonly earlier: readonly string[];
}

/** An explanation in plain sentences. `cells` are those of the study. Null where nothing is recommended. */
export const whySentences = (
  explanation: Explanation,
  cells: readonly SpeedOfCell[],
): WhySaid | null => {
  const { speed, answer } = explanation;
  if (speed === undefined || answer.recommended === null) return null;
  const { outOf100, surePct } = answer.recommended;
  const promise = `${inHundred(outOf100)} in 100 come out (${sureWords(surePct)} sure)`;
  return {
    held: heldBy[speed.heldBy](speed, promise),
    carries: [...carried(speed, cells), ...heaviest(speed, cells)],
    changes: changes(speed),
    expectation: expectations(explanation),
    earlier: leanings(explanation),
  };
};

/** Words of the screen and the page that say why. */
export const whyText = {
  calculating: 'Weighing every shape…',
  broke: (what: string) => `The calculation broke off (${what}). Please report this.`,
  noAnswer: 'There is no answer to explain yet.',
  pictureLabel: (speedMmPerS: number) =>
    `The shapes by speed; the larger the ring, the more the answer of ${speedWords(speedMmPerS)} rests on it.`,
  key: 'The larger the ring, the more the answer rests on that shape.',
  slower: 'holds it back: without it the answer is faster',
  faster: 'lets it be so fast: without it the answer is slower',
  answerMark: (speedMmPerS: number) => `answer ${speedWords(speedMmPerS)}`,
  carries: 'What carries it',
  changes: 'What would change it',
  expectation: 'What rests on expectation',
  earlier: 'What earlier sheets add',
  figures: 'The figures behind it',
  partsTable: 'The answer without each part',
  part: 'left out',
  becomes: 'becomes',
  moves: 'moves',
  by: 'calculated by',
  byWeights: 'weights',
  byFit: 'a new fit',
  byRoughWeights: 'weights, roughly',
  rung: (speedMmPerS: number, powerPct: number, cells: number) =>
    `${counted(cells, 'shape')} at ${speedWords(speedMmPerS)}, ${powerWords(powerPct)}`,
  card: (name: string, cells: number) =>
    name === ''
      ? `all ${counted(cells, 'shape')}`
      : `${capital(name)} (${counted(cells, 'shape')})`,
  order: (name: string, parts: number) =>
    `order${name === '' ? '' : ` ${name}`} (${counted(parts, 'part')})`,
  habit: 'what you run now',
  earlierBatch: (index: number, shapes: number) =>
    `earlier batch ${String(index + 1)} (${counted(shapes, 'shape')})`,
  nextTable: 'One more shape, and the answer after it',
  comesOut: 'comes out',
  hangs: 'hangs',
  stays: 'not through',
  at: 'at',
  chance: (probability: number) => percent(100 * probability),
  learntTable: 'What was learnt',
  quantity: 'quantity',
  before: 'expected',
  after: 'now',
  learnt: 'learnt',
  quantities,
  learntShare: (learntPct: number) => percent(learntPct),
  figure: (mean: number, sd: number) => `${mean.toFixed(2)} ± ${sd.toFixed(2)}`,
  inLn: 'Changeover, scatter and hanging band as logarithms. Learnt: 1 − variance/variance before.',
  whatIfTable: 'The answer under other assumptions',
  assumption: 'assumption',
  whatIf: whatIfNames,
  reckoned: ({ points, effectivePoints, paretoShape, fits, rough }: Explanation['calculation']) =>
    `${String(points)} points of the posterior on lines, worth ${String(effectivePoints)} lines of equal weight; shape of the weights’ tail ${paretoShape.toFixed(2)} (below 0.7 is sound). Left-out parts and next shapes are calculated by weighing these points anew, with the tail smoothed; where that tail is heavier than 0.5 a new fit was made (${String(fits)} of them).${rough === 0 ? '' : ` For ${String(rough)} more that would have taken too long: they are rough.`}`,
  pdf: 'The whole reasoning as a PDF',
  rough: 'rough',
  untried: (names: readonly WhatIfName[]) =>
    `Not tried, since with so many readings it would have taken too long: ${names.map((name) => whatIfNames[name]).join('; ')}.`,
  orNone,
  shift: shiftWords,
};
