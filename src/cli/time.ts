import { mistypedByTime, type TimeVerdict } from '../core/card/mistypedByTime.ts';
import { toolpathTime, type ToolpathTime } from '../core/filecheck/toolpathTime.ts';
import type { Toolpath } from '../core/filecheck/toolpath.ts';
import { undescribedMachine, type Machine } from '../core/machine/machine.ts';
import { done, refused, type Outcome } from '../core/problem.ts';
import { lengthMm } from '../core/path/polyline.ts';
import { parseDuration } from '../core/units/duration.ts';
import { parseCardFile } from '../formats/cardFile.ts';
import { typingVerdictWords } from '../words/texts.ts';
import { problemInWords } from '../words/words.ts';
import { printJson, printRefusal, type ExitCode } from './output.ts';
import { readDrawing } from './readDrawing.ts';
import { readMachine, readNamed } from './readNamed.ts';

interface TimeOptions {
  readonly machine?: string;
  /** In mm/s, for lines whose file says none. */
  readonly speed?: string;
  readonly card?: string;
  /** What the machine said it took: seconds, minutes:seconds, or `4 min 10 s`. */
  readonly took?: string;
}

interface Timed {
  readonly toolpath: Toolpath;
  readonly time: Outcome<ToolpathTime>;
  readonly typing?: TimeVerdict;
}

/**
 * `time FILE [--machine machine.json] [--speed MMPS] [--card card.json --took TIME]`: how long a drawing or program takes
 * and where that goes; with what the machine said, whether a speed was mistyped. Where a file says no speeds, the time is
 * null with the reason.
 */
export const runTime = async (file: string, options: TimeOptions): Promise<ExitCode> => {
  const timed = await timeFile(file, options);
  if (!timed.ok) return printRefusal(timed.problem);
  printJson(shown(file, timed.value));
  return 0;
};

const timeFile = async (file: string, options: TimeOptions): Promise<Outcome<Timed>> => {
  const asked = readOptions(options);
  if (!asked.ok) return asked;
  const { speedMmPerS, tookSeconds } = asked.value;
  const described = await readMachine(options.machine);
  if (!described.ok) return described;
  const card = await readNamed(options.card, parseCardFile);
  if (!card.ok) return card;
  const toolpath = await readDrawing(file);
  if (!toolpath.ok) return toolpath;
  const machine: Machine = described.value?.machine ?? undescribedMachine;
  return done({
    toolpath: toolpath.value,
    time: toolpathTime(toolpath.value, machine, speedMmPerS),
    ...(card.value === undefined || tookSeconds === undefined
      ? {}
      : { typing: mistypedByTime(card.value, tookSeconds, { machine }) }),
  });
};

const readOptions = ({
  speed,
  took,
  card,
}: TimeOptions): Outcome<{ readonly speedMmPerS?: number; readonly tookSeconds?: number }> => {
  const speedMmPerS = speed === undefined ? undefined : Number(speed);
  if (speedMmPerS !== undefined && !(speedMmPerS >= 0.05 && speedMmPerS <= 5000)) {
    return refused('command-misused', {
      detail: `--speed is “${speed ?? ''}”, not 0.05 to 5000 mm/s`,
    });
  }
  const tookSeconds = took === undefined ? undefined : secondsOf(took);
  if (tookSeconds !== undefined && !(tookSeconds > 0 && tookSeconds < 1e6)) {
    return refused('command-misused', {
      detail: `--took is “${took ?? ''}”, not seconds or min:s`,
    });
  }
  if ((took === undefined) !== (card === undefined)) {
    return refused('command-misused', { detail: '--card and --took go together' });
  }
  return done({
    ...(speedMmPerS === undefined ? {} : { speedMmPerS }),
    ...(tookSeconds === undefined ? {} : { tookSeconds }),
  });
};

/** NaN where it is no time. */
const secondsOf = (text: string): number => {
  const seconds = parseDuration(text);
  return seconds.ok ? seconds.value : NaN;
};

const shown = (file: string, { toolpath, time, typing }: Timed): object => ({
  version: 1,
  file,
  kind: toolpath.kind,
  ...(time.ok ? shownTime(time.value) : { seconds: null, reason: problemInWords(time.problem) }),
  lines: toolpath.lines.length,
  cutMm: rounded(time.ok ? time.value.cutMm : lengthOf(toolpath), 1),
  remarks: [
    ...toolpath.noticed.filter(({ code }) => bearsOnTime.has(code)),
    ...(time.ok && time.value.motion === 'assumed'
      ? [{ code: 'time-motion-assumed', params: {} }]
      : []),
  ].map((problem) => problemInWords(problem)),
  ...(typing === undefined ? {} : { typing: shownTyping(typing) }),
});

const lengthOf = ({ lines }: Toolpath): number =>
  lines.reduce((sum, line) => sum + line.passes * lengthMm(line.points), 0);

/** What a reader notices that makes a time wrong. */
const bearsOnTime: ReadonlySet<string> = new Set([
  'check-part-not-read',
  'check-text-not-lines',
  'check-unseen-cut',
  'check-hidden-left-out',
  'check-paper-left-out',
  'check-curve-guessed',
  'check-units-assumed',
  'check-units-unsaid',
]);

const shownTime = (time: ToolpathTime): object => ({
  seconds: rounded(time.seconds),
  lowSeconds: rounded(time.lowSeconds),
  highSeconds: rounded(time.highSeconds),
  motion: time.motion,
  goes: {
    cuttingSeconds: rounded(time.cuttingS),
    cornersSeconds: rounded(time.cornersS),
    travelSeconds: rounded(time.travelS),
    delaysSeconds: rounded(time.delaysS),
  },
  layers: time.layers.map(({ name, seconds }) => ({ name, seconds: rounded(seconds) })),
  travelMm: rounded(time.travelMm, 1),
});

const shownTyping = (typing: TimeVerdict): object => ({
  verdict: typing.verdict,
  expectedSeconds: rounded(typing.expectedSeconds),
  showsFromSeconds: rounded(typing.showsFromSeconds),
  suspects: typing.suspects.map((suspect) => ({
    ...suspect,
    probability: rounded(suspect.probability, 3),
  })),
  sentences: typingVerdictWords(typing),
});

const rounded = (value: number, decimals = 2): number => Number(value.toFixed(decimals));
