import { mkdirSync, writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { coverageOf, levels } from './coverage.ts';
import { drawRanks } from './drawRanks.ts';
import { calibrated, ranksOf } from './ranks.ts';

/*
 * Whether the posterior is right on average: studies drawn from its own priors, the truth's place in each posterior, their
 * coverage and their histogram. About 45 ms a study.
 */
const { values } = parseArgs({
  options: {
    studies: { type: 'string', default: '300' },
    seed: { type: 'string', default: '1' },
    into: { type: 'string', default: 'docs/paper' },
  },
});
const studies = Number(values.studies);
const ranks = await ranksOf({ studies, seed: Number(values.seed) });
const titles = {
  lnV50: 'ln v50',
  sigma: 'scatter σ',
  hangBand: 'hanging band g',
  powerExponent: 'power exponent b',
  sheetSd: 'sheet scatter ω',
} as const;

const rows = calibrated.map((name) => ({
  name,
  title: titles[name],
  coverage: coverageOf(ranks.map(({ below }) => below[name])),
}));
const sure = levels.map((level) => 1.96 * Math.sqrt((level * (100 - level)) / studies));
process.stdout.write(
  `${String(studies)} studies; ±${sure.map((s) => s.toFixed(1)).join(', ')} points is chance\n`,
);
for (const { title, coverage } of rows) {
  process.stdout.write(
    `${title.padEnd(18)} inside 50/80/95 %: ${coverage.insidePct.map((pct) => pct.toFixed(1).padStart(5)).join(' ')}   evenness p = ${coverage.pValue.toFixed(3)}\n`,
  );
}
const effective = ranks.map((rank) => rank.effectivePoints).toSorted((a, b) => a - b);
process.stdout.write(
  `effective points: least ${String(Math.round(effective[0] ?? 0))}, median ${String(Math.round(effective[effective.length >> 1] ?? 0))}; refused as not converged: ${String(ranks.filter(({ converged }) => !converged).length)}\n`,
);
mkdirSync(values.into, { recursive: true });
writeFileSync(`${values.into}/calibration.svg`, drawRanks(rows, studies));
writeFileSync(
  `${values.into}/calibration.json`,
  `${JSON.stringify({ studies, seed: Number(values.seed), parameters: Object.fromEntries(rows.map(({ name, coverage }) => [name, coverage])) }, null, 2)}\n`,
);
