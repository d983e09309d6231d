import type { NightPart } from '../night/nightPart.ts';
import { brokenRules, ruleBreaks, type BrokenRule } from './rules.ts';

/** The tests beside it take the seeds before these. */
const firstSeed = 31;
const studies = 2000;
const told = 5;

/** What no study with counted orders may do, over thousands that nobody chose. */
export const ordersPart: NightPart = {
  name: 'orders',
  about:
    'no bad order raises an answer, no clean one lowers it, none stands at a speed that failed',
  *run() {
    const broken = new Map<BrokenRule, string[]>(ruleBreaks.map((rule) => [rule, []]));
    for (let seed = firstSeed; seed < firstSeed + studies; seed += 1) {
      for (const rule of brokenRules(seed)) broken.get(rule)?.push(`study ${String(seed)}`);
    }
    yield { what: 'studies with counted orders', value: studies };
    for (const [rule, cases] of broken) {
      yield { what: rule, value: cases.length, atMost: 0, cases: cases.slice(0, told) };
    }
  },
};
