import { problemOf, type Problem } from '../problem.ts';
import type { GcodeDialect } from './gcodeDialect.ts';

/** What a controller carries out of a line: no comments, no white space, no line number (RS-274/NGC: neither means anything). */
const carriedOut = (line: string): string =>
  line
    .replace(/\([^)]*\)|;.*$/g, '')
    .replace(/\s/g, '')
    .toUpperCase();

/** M3 or M4 in any way of writing them, outside comments. */
export const lightsBeam = (line: string): boolean =>
  /M\+?0*[34](?:\.0*)?(?![\d.])/.test(carriedOut(line));

/**
 * M words that set an output of the controller by its number, of several dialects of RS-274, as the manuals of open-source controllers
 * have them: digital outputs (M62 to M65) and analog ones (M67, M68), a pin (M42), and the output of a fan (M106), on which many a
 * laser hangs. M66 waits for an input, M107 turns the fan’s output off.
 */
const outputWords = [42, 62, 63, 64, 65, 67, 68, 106];

const mWords = (bare: string): readonly number[] =>
  [...bare.matchAll(/M\+?(\d+(?:\.\d*)?)/g)].map(([, number]) => Number(number));

/**
 * What hides a word from whoever reads the file: a number that the controller works out (`M[1+2]`, `M#1`), or a program that is
 * called from elsewhere (M98, `O100 call`).
 */
const hidesWords = (bare: string): boolean =>
  /[[\]#]/.test(bare) || /O.*CALL|O</.test(bare) || mWords(bare).includes(98);

/** A stored value of the controller given anew, `$30=255`: what S means at full power, say, or how the beam behaves in travels. */
const setsController = (bare: string): boolean => /^\$.*=/.test(bare);

/**
 * Why a line of one’s own may not go into a file beside what is cut; undefined where it may. Which output the laser hangs on nobody
 * knows here, and what S means at full power is said in the card’s own settings: a line that changes either could light the beam
 * where it stands, or cut everything at full power, whatever the words beside the shapes say.
 */
export const ownLineProblem = (line: string): Problem | undefined => {
  const bare = carriedOut(line);
  const text = line.trim();
  if (lightsBeam(line)) return problemOf('line-not-own-gcode', { text });
  if (mWords(bare).some((word) => outputWords.includes(word)))
    return problemOf('gcode-line-switches-output', { text });
  if (hidesWords(bare)) return problemOf('gcode-line-hides-words', { text });
  return setsController(bare) ? problemOf('gcode-line-sets-controller', { text }) : undefined;
};

/** The same for all lines of a machine’s own, those before and those after. */
export const ownLinesProblem = ({
  opening,
  closing,
}: Pick<GcodeDialect, 'opening' | 'closing'>): Problem | undefined =>
  [...opening, ...closing].map(ownLineProblem).find((problem) => problem !== undefined);
