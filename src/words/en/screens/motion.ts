import type { CornerRule, MotionValues } from '../../../core/motion/motionValues.ts';
import type { MotionFit } from '../../../core/motion/fitMotion.ts';
import type { MotionUnknown } from '../../../core/motion/motionUnknowns.ts';
import type { TimedJobKind } from '../../../core/motion/timedJobs.ts';
import {
  accelerationWords,
  durationWords,
  lengthWords,
  listed,
  speedWords,
} from '../terms/figures.ts';

const gap = '\u202f';
/** To a tenth; what rounds to nothing has no sign. */
const pct = (value: number): string =>
  `${(Math.round(value * 10) / 10 || 0).toFixed(1).replace('-', '\u2212')}${gap}%`;

const unknown: Readonly<Record<MotionUnknown, string>> = {
  acceleration: 'acceleration',
  corner: 'the corner’s figure',
  travelSpeed: 'travel speed',
  travelAcceleration: 'acceleration in travel',
  lineDelay: 'what each start costs',
  jobDelay: 'what each job costs once',
};

const corner = (rule: CornerRule): string =>
  rule.rule === 'junction-deviation'
    ? `corners by a deviation of ${lengthWords(Number(rule.deviationMm.toPrecision(2)))}`
    : `corners by a jump of ${[...new Set([rule.xMmPerS, rule.yMmPerS].map((v) => speedWords(Number(v.toPrecision(2)))))].join(' and ')}`;

/** The screen of how a machine moves. */
export const motionText = {
  link: 'How it moves',
  title: 'How it moves',
  lead: 'With this the time of a card is known so closely that a wrong time betrays a mistyped speed.',
  typed: 'From the controller’s settings',
  typedMore: 'As its manual or its own list of settings says. It takes three figures.',
  acceleration: 'Acceleration',
  travel: 'Travel speed',
  rule: 'How it takes corners',
  rules: {
    'speed-jump': { label: 'by a jump of speed', more: 'how much an axis may jump' },
    'junction-deviation': { label: 'by a deviation', more: 'how far off the corner' },
  } satisfies Record<CornerRule['rule'], { label: string; more: string }>,
  jumpX: 'Jump along x',
  jumpY: 'Jump along y',
  deviation: 'Deviation',
  rampStart: 'Power ramp starts at',
  rampStartHint: 'At or below this speed it runs on the corner power. May stay empty.',
  incomplete: 'Not known yet: acceleration, corner and travel speed count together.',
  known: (motion: MotionValues) =>
    `Known: ${accelerationWords(motion.accelerationMmPerS2)}, ${corner(motion.corner)}, travel at ${speedWords(Number(motion.travelSpeedMmPerS.toPrecision(3)))}; times from it may be off by ${pct(motion.timeErrorPct ?? 5)}.`,
  jobs: 'From jobs that are timed',
  jobsMore:
    'Run these with the beam disarmed and enter what the display or a stopwatch said, from start to standstill. Three give a first answer, six tell all.',
  jobsHow:
    'One pass, at the speed that is said. In the control program, leave the lines in the order in which they are drawn.',
  gcodeMore: 'The G-code never switches the beam on, so it cannot tell what a start costs.',
  job: (number: number) => `Job ${String(number)}`,
  jobShows: {
    'far-travel': 'far ends of the bed, by turns: travel',
    'right-angles': 'a staircase: right angles',
    'many-starts': 'many short lines: starts',
    'long-runs': 'rows across the bed: long runs',
    'gentle-corners': 'a ring, round and round: gentle corners',
    'short-zigzag': 'short ways there and back: acceleration',
  } satisfies Record<TimedJobKind, string>,
  atSpeed: (speedMmPerS: number) => `at ${speedWords(Number(speedMmPerS.toFixed(2)))}`,
  took: (number: number) => `Job ${String(number)} took`,
  fit: 'Work out how it moves',
  fitNeeds: (count: number) => `${String(count)} of at least 3 timed.`,
  working: 'Working it out',
  broke: (what: string) =>
    `The calculation broke off (${what}). Your times are kept; please report this.`,
  fitTitle: 'What the times say',
  fits: ({ offPct }: MotionFit) =>
    `The machine that fits best is off by ${pct(offPct)} on these jobs.`,
  /** Of the time of another job. */
  error: ({ timeErrorPct = 5 }: MotionValues) =>
    `Times worked out with it may be off by ${pct(timeErrorPct)}, twice that now and then.`,
  values: (motion: MotionValues): readonly string[] => [
    `Acceleration ${accelerationWords(motion.accelerationMmPerS2)}; ${corner(motion.corner)}.`,
    `Travel at ${speedWords(Number(motion.travelSpeedMmPerS.toPrecision(3)))}${motion.travelAccelerationMmPerS2 === undefined ? '' : `, accelerated with ${accelerationWords(motion.travelAccelerationMmPerS2)}`}.`,
    `Each start costs ${seconds(motion.lineDelayS ?? 0)}, each job ${seconds(motion.jobDelayS ?? 0)}.`,
  ],
  columns: ['Job', 'It took', 'Worked out', 'Off'],
  caption: 'The jobs, and what the fitted machine would take over them.',
  duration: (value: number) => (value < 600 ? `${value.toFixed(1)}${gap}s` : durationWords(value)),
  off: pct,
  ruleUntold: 'These jobs do not tell the two ways of taking corners apart.',
  untold: ({ untold }: MotionFit) =>
    `The jobs say little of ${listed(untold.map((name) => unknown[name]))}: what is common stands there.`,
  notApart: ({ notApart }: MotionFit) =>
    `Not told apart, only together: ${listed(notApart.map(([one, other]) => `${unknown[one]} with ${unknown[other]}`))}.`,
  apart: 'The jobs tell all of these apart.',
  keep: 'Keep it in the machine',
  kept: 'Kept. Times of cards are worked out with it from now on.',
};

const seconds = (value: number): string => `${value.toFixed(value < 1 ? 3 : 1)}${gap}s`;
