import { readingLimits } from '../readingLimits.ts';
import { resolveArc, type PlaneArc } from './gcodeArc.ts';
import { arcLetters, axisLetters, LineWords, each, movesZero, passedOver } from './lineWords.ts';
import { conflictIn, groupOf } from './gcodeModes.ts';
import type {
  GcodeError,
  GcodeMove,
  GcodeProgram,
  GcodeState,
  Plane,
  Position,
} from './gcodeProgram.ts';
import { linesOf } from './sourceLines.ts';
import { takeApart, type GcodeLine, type GcodeWord } from './gcodeWords.ts';

interface Options {
  readonly blockDeleteOn?: boolean;
  readonly startUnits?: 'G20' | 'G21';
}

type Outcome =
  | { readonly ok: true; readonly program: GcodeProgram }
  | { readonly ok: false; readonly error: GcodeError };

/**
 * Carries out a program as the NIST report describes (Kramer, Proctor & Messina, RS274/NGC Interpreter, version 3, NISTIR
 * 6556, 2000), as far as a laser needs it: motion, arcs in three planes, units, distance and feed modes, offsets by G92,
 * spindle words as beam, coolant words as air. Words that it does not know are noted and passed over. Ends where a program
 * has more moves and comments than any. O(lines).
 */
export const interpretGcode = (text: string, options: Options = {}): Outcome => {
  const run = new Run(options.startUnits ?? 'G21');
  let delimited: boolean | undefined;
  for (const { number, source } of linesOf(text)) {
    if (source.length > readingLimits.lineSigns) return run.failed(number, 'too long a line');
    const isFirst = delimited === undefined && source.trim() !== '';
    if (isFirst) delimited = source.trim() === '%';
    const line = takeApart(source);
    if ('why' in line) return run.failed(number, line.why);
    if (line.percent) {
      if (delimited === true && !isFirst) break;
      continue;
    }
    const wrong = run.carryOut(number, line, options.blockDeleteOn ?? true);
    if (wrong !== undefined) return run.failed(number, wrong);
    if (run.noted > readingLimits.moves)
      return run.failed(
        number,
        `more than ${String(readingLimits.moves)} moves, comments or settings`,
      );
    if (run.ended) break;
  }
  return { ok: true, program: run.program() };
};

const inch = 25.4;
const planes: Readonly<
  Record<Plane, readonly [first: 0 | 1 | 2, second: 0 | 1 | 2, across: 0 | 1 | 2]>
> = {
  G17: [0, 1, 2],
  G18: [2, 0, 1],
  G19: [1, 2, 0],
};

type Mutable<T> = { -readonly [K in keyof T]: T[K] };

/** A whole circle needs no axis words: its end is its start. So does an arc by radius, which then is refused. */
const fullTurn = (motion: number | undefined, codes: LineWords): boolean =>
  (motion === 2 || motion === 3) &&
  ['I', 'J', 'K', 'R'].some((letter) => codes.value(letter) !== undefined);

/** The machine while it reads: the only place where its state changes. */
class Run {
  readonly #state: Mutable<GcodeState>;
  readonly #moves: GcodeMove[] = [];
  readonly #comments: { line: number; text: string }[] = [];
  readonly #dwells: { line: number; seconds: number; lit: boolean }[] = [];
  readonly #unknown: { line: number; word: string }[] = [];
  readonly #zeroes: { line: number; word: string }[] = [];
  #firstUnits: GcodeState['units'] | undefined;
  #unitsChange: number | null = null;
  readonly #saysFeed = new Set<number>();
  readonly #saysPower = new Set<number>();
  readonly #declared = { units: false, distance: false };
  #end: { line: number; by: 2 | 30 } | null = null;
  /** Under G93: moves a minute, said anew on each line. */
  #inverseMinutes = 0;

  constructor(units: 'G20' | 'G21') {
    this.#state = {
      position: [0, 0, 0],
      motion: 'G1',
      plane: 'G17',
      distance: 'G90',
      feedMode: 'G94',
      units,
      spindle: 5,
      air: false,
      feedMmPerMin: 0,
      s: 0,
      offsetMm: [0, 0, 0],
    };
  }

  get ended(): boolean {
    return this.#end !== null;
  }

  /** How many are kept of whatever there is most of. */
  get noted(): number {
    return Math.max(
      this.#moves.length,
      this.#comments.length,
      this.#dwells.length,
      this.#unknown.length,
      this.#zeroes.length,
      this.#saysFeed.size,
      this.#saysPower.size,
    );
  }

  failed(line: number, why: string): Outcome {
    return { ok: false, error: { line, why, movesBefore: this.#moves.length } };
  }

  program(): GcodeProgram {
    return {
      moves: this.#moves,
      comments: this.#comments,
      dwells: this.#dwells,
      programEnd: this.#end,
      final: { ...this.#state },
      unknown: this.#unknown,
      zeroes: this.#zeroes,
      unitsChange: this.#unitsChange,
      declared: { ...this.#declared },
      saysFeed: this.#saysFeed,
      saysPower: this.#saysPower,
    };
  }

  /** One line, in the order of execution that the report gives. Says what is wrong, if anything. */
  carryOut(number: number, line: GcodeLine, blockDeleteOn: boolean): string | undefined {
    for (const text of line.comments) this.#comments.push({ line: number, text });
    if (line.deletable && blockDeleteOn) return undefined;
    const conflict = conflictIn(line.words);
    if (conflict !== undefined) return conflict;
    const codes = new LineWords(line.words);
    this.#noteUnknown(number, line.words);
    const wrongBefore =
      this.#feed(number, codes) ?? this.#beam(number, codes) ?? this.#dwell(number, codes);
    if (wrongBefore !== undefined) return wrongBefore;
    this.#modes(codes);
    const wrong = this.#offset(codes) ?? this.#move(number, codes);
    if (wrong === undefined) this.#stop(number, codes);
    return wrong;
  }

  #noteUnknown(line: number, words: readonly GcodeWord[]): void {
    for (const word of words) {
      const known =
        'XYZIJKRFSPNLT'.includes(word.letter) || (groupOf(word) !== undefined && !passedOver(word));
      const named = { line, word: `${word.letter}${String(word.value)}` };
      if (!known) this.#unknown.push(named);
      if (movesZero(word)) this.#zeroes.push(named);
    }
  }

  #feed(number: number, codes: LineWords): string | undefined {
    const mode = codes.ofGroup('feed mode');
    if (mode !== undefined) this.#state.feedMode = mode === 93 ? 'G93' : 'G94';
    const feed = codes.value('F');
    this.#inverseMinutes = 0;
    if (feed === undefined) return undefined;
    if (feed < 0) return 'negative feed rate';
    this.#saysFeed.add(number);
    if (this.#state.feedMode === 'G93') this.#inverseMinutes = feed === 0 ? 0 : 1 / feed;
    else this.#state.feedMmPerMin = feed * this.#unit();
    return undefined;
  }

  #beam(number: number, codes: LineWords): string | undefined {
    const s = codes.value('S');
    if (s !== undefined) {
      if (s < 0) return 'negative spindle speed';
      this.#state.s = s;
      this.#saysPower.add(number);
    }
    const spindle = codes.ofGroup('spindle');
    if (spindle === 3 || spindle === 4 || spindle === 5) this.#state.spindle = spindle;
    if (codes.has('M', 7) || codes.has('M', 8)) this.#state.air = true;
    if (codes.has('M', 9)) this.#state.air = false;
    return undefined;
  }

  #dwell(number: number, codes: LineWords): string | undefined {
    if (!codes.has('G', 4)) return undefined;
    const seconds = codes.value('P');
    if (seconds === undefined) return 'dwell without P';
    if (seconds < 0) return 'negative dwell';
    this.#dwells.push({ line: number, seconds, lit: this.#lit() });
    return undefined;
  }

  #modes(codes: LineWords): void {
    const plane = codes.ofGroup('plane');
    if (plane === 17 || plane === 18 || plane === 19) this.#state.plane = `G${plane}`;
    const units = codes.ofGroup('units');
    if (units === 20 || units === 21) {
      this.#state.units = `G${units}`;
      if (this.#moves.length === 0) this.#declared.units = true;
    }
    const distance = codes.ofGroup('distance');
    if (distance === 90 || distance === 91) {
      this.#state.distance = `G${distance}`;
      if (this.#moves.length === 0) this.#declared.distance = true;
    }
  }

  /** G92 makes the place where the head stands have the coordinates that are said. */
  #offset(codes: LineWords): string | undefined {
    const { position, offsetMm } = this.#state;
    if (codes.has('G', 92)) {
      if (!codes.hasAxes()) return 'G92 without axis words';
      this.#state.offsetMm = each((axis) => {
        const said = codes.value(axisLetters[axis]);
        return said === undefined ? offsetMm[axis] : position[axis] - said * this.#unit();
      });
    }
    if (codes.has('G', 92.1) || codes.has('G', 92.2)) this.#state.offsetMm = [0, 0, 0];
    return undefined;
  }

  #move(number: number, codes: LineWords): string | undefined {
    const motion = codes.ofGroup('motion');
    if (motion !== undefined) this.#state.motion = `G${String(motion)}`;
    const forOffset =
      codes.has('G', 92) || codes.has('G', 10) || codes.has('G', 28) || codes.has('G', 30);
    if (forOffset) return undefined;
    if (!codes.hasAxes() && !fullTurn(motion, codes)) return undefined;
    switch (this.#state.motion) {
      case 'G0':
        return this.#straight(number, codes, 'rapid');
      case 'G1':
        return this.#straight(number, codes, 'line');
      case 'G2':
        return this.#arc(number, codes, true);
      case 'G3':
        return this.#arc(number, codes, false);
      case 'G80':
        return 'axis words while G80 is active';
      default:
        return `${this.#state.motion} is no motion of a laser`;
    }
  }

  #straight(number: number, codes: LineWords, type: 'rapid' | 'line'): string | undefined {
    const end = this.#target(codes);
    const length = Math.hypot(...each((axis) => end[axis] - this.#state.position[axis]));
    return this.#push(number, type, end, length);
  }

  #arc(number: number, codes: LineWords, clockwise: boolean): string | undefined {
    if (codes.has('G', 53)) return 'arc with G53';
    const end = this.#target(codes);
    const { position, plane } = this.#state;
    const [first, second, across] = planes[plane];
    const offset = (axis: 0 | 1 | 2): number | undefined => {
      const said = codes.value(arcLetters[axis]);
      return said === undefined ? undefined : said * this.#unit();
    };
    const radius = codes.value('R');
    const arc = resolveArc({
      start: [position[first], position[second]],
      end: [end[first], end[second]],
      clockwise,
      offset: [offset(first), offset(second)],
      radiusMm: radius === undefined ? undefined : radius * this.#unit(),
      toleranceMm: this.#state.units === 'G20' ? 0.0002 * inch + 1e-9 : 0.002 + 1e-9,
    });
    if ('why' in arc) return arc.why;
    const length = Math.hypot(arc.radiusMm * arc.sweepRad, end[across] - position[across]);
    return this.#push(number, clockwise ? 'arcCw' : 'arcCcw', end, length, arc);
  }

  #target(codes: LineWords): Position {
    const { position, offsetMm, distance } = this.#state;
    const unit = this.#unit();
    return each((axis) => {
      const said = codes.value(axisLetters[axis]);
      if (said === undefined) return position[axis];
      if (codes.has('G', 53)) return said * unit;
      return distance === 'G91' ? position[axis] + said * unit : said * unit + offsetMm[axis];
    });
  }

  #push(
    line: number,
    type: GcodeMove['type'],
    end: Position,
    lengthMm: number,
    arc?: PlaneArc,
  ): string | undefined {
    const { position, feedMode, feedMmPerMin, s, spindle, air, plane } = this.#state;
    const rapid = type === 'rapid';
    const inverse = feedMode === 'G93';
    if (!rapid && inverse && this.#inverseMinutes === 0) return 'inverse time motion without F';
    if (!rapid && !inverse && feedMmPerMin === 0) return 'feed motion with feed rate 0';
    this.#firstUnits ??= this.#state.units;
    if (this.#state.units !== this.#firstUnits) this.#unitsChange ??= line;
    this.#moves.push({
      line,
      type,
      start: position,
      end,
      feedMmPerMin: rapid || inverse ? null : feedMmPerMin,
      s,
      spindle,
      air,
      lengthMm,
      minutes: rapid ? 0 : inverse ? this.#inverseMinutes : lengthMm / feedMmPerMin,
      ...(arc === undefined ? {} : { arc: { plane, ...arc } }),
    });
    this.#state.position = end;
    return undefined;
  }

  /** M2 and M30 also put the machine back into its usual state; the units stay. */
  #stop(line: number, codes: LineWords): void {
    const by = codes.ofGroup('stop');
    if (by !== 2 && by !== 30) return;
    this.#end = { line, by };
    Object.assign(this.#state, {
      motion: 'G1',
      plane: 'G17',
      distance: 'G90',
      feedMode: 'G94',
      spindle: 5,
      air: false,
      offsetMm: [0, 0, 0],
    } satisfies Partial<GcodeState>);
  }

  #unit(): number {
    return this.#state.units === 'G20' ? inch : 1;
  }

  #lit(): boolean {
    return this.#state.spindle !== 5 && this.#state.s > 0;
  }
}
