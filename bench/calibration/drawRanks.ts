import { betaQuantile } from '../../src/num/distributions.ts';
import { bins, levels, type Coverage } from './coverage.ts';

const panel = { width: 220, height: 130, gap: 44, left: 46, top: 64 };

/** A histogram a parameter, with the band that 99 of 100 bars should lie in. */
export const drawRanks = (
  rows: readonly { readonly title: string; readonly coverage: Coverage }[],
  studies: number,
): string => {
  const band = countBand(studies);
  const most = Math.max(band[1], ...rows.flatMap(({ coverage }) => coverage.counts)) * 1.08;
  const width = panel.left + rows.length * (panel.width + panel.gap);
  const height = panel.top + panel.height + 74;
  const parts = rows.map(({ title, coverage }, i) => {
    const x0 = panel.left + i * (panel.width + panel.gap);
    const bottom = panel.top + panel.height;
    const up = (count: number): number => (panel.height * count) / most;
    const wide = panel.width / bins;
    const bars = coverage.counts.map(
      (count, k) =>
        `<rect x="${fixed(x0 + k * wide + 0.5)}" y="${fixed(bottom - up(count))}" width="${fixed(wide - 1)}" height="${fixed(up(count))}" fill="#56B4E9"/>`,
    );
    const inside = levels.map(
      (level, k) => `${String(level)} %: ${fixed(coverage.insidePct[k] ?? 0)}`,
    );
    return [
      text(x0, panel.top - 14, title, 'font-size="14" font-weight="700"'),
      `<rect x="${fixed(x0)}" y="${fixed(bottom - up(band[1]))}" width="${String(panel.width)}" height="${fixed(up(band[1]) - up(band[0]))}" fill="#ddd"/>`,
      ...bars,
      `<rect x="${fixed(x0)}" y="${fixed(bottom - up(band[1]))}" width="${String(panel.width)}" height="${fixed(up(band[1]) - up(band[0]))}" fill="none" stroke="#666" stroke-dasharray="3 3"/>`,
      `<path d="M${fixed(x0)} ${fixed(bottom)}h${String(panel.width)}" stroke="#222"/>`,
      text(x0, bottom + 16, '0', 'font-size="11"'),
      text(x0 + panel.width, bottom + 16, '1', 'font-size="11" text-anchor="end"'),
      text(x0, bottom + 36, `inside ${inside.join(', ')}`, 'font-size="11"'),
      text(x0, bottom + 52, `evenness p = ${coverage.pValue.toFixed(3)}`, 'font-size="11"'),
    ].join('');
  });
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${String(width)} ${String(height)}" width="${String(width)}" height="${String(height)}" font-family="sans-serif" fill="#222">
<rect width="100%" height="100%" fill="#fff"/>
${text(panel.left, 24, `Where the truth stands in its posterior: ${String(studies)} studies drawn from the priors, 24 cells each; band: 99 of 100 bars`, 'font-size="13"')}
${parts.join('\n')}
</svg>
`;
};

/** What a bar holds 99 times in 100 if the spread is even, by the beta form of the binomial's limits. */
const countBand = (studies: number): readonly [number, number] => {
  const mean = studies / bins;
  const at = (p: number): number => studies * betaQuantile(p, mean + 0.5, studies - mean + 0.5);
  return [at(0.005), at(0.995)];
};

const fixed = (value: number): string => value.toFixed(1);

const text = (x: number, y: number, words: string, style: string): string =>
  `<text x="${fixed(x)}" y="${fixed(y)}" ${style}>${words}</text>`;
