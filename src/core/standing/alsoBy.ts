import type { AnswerSeen, KeptSeen } from './evidence.ts';
import { answerFindings, heldDown } from './findings.ts';
import { rankOf, type Standing } from './standing.ts';

/**
 * The standing with a newer answer added, as where cards are read while one looks on: an answer that says less takes it
 * down, one that says more waits until all is weighed again.
 */
export const alsoBy = (standing: Standing, kept: KeptSeen, answer: AnswerSeen): Standing =>
  answerFindings(kept, answer).reduce<Standing>((now, finding) => {
    const { run = kept.setting } = now;
    const speedMmPerS = heldDown(run.speedMmPerS, [finding.atMostMmPerS ?? Infinity], answer);
    const held = {
      ...now,
      run: speedMmPerS < run.speedMmPerS ? { ...run, speedMmPerS } : run,
    };
    if (rankOf(finding.kind) >= rankOf(now.kind)) return held;
    const { kind, why, next } = finding;
    return { ...held, kind, why, next };
  }, standing);
