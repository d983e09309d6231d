import { groupAlike, type CutAlike } from './cutAlike.ts';
import type { Link } from './links.ts';
import type { Model } from './model.ts';

/** What the shapes of one setting say of their sheet's level, roughly: where so large a share as theirs comes out. */
export interface Settled extends CutAlike {
  /** Margin, in σ. */
  readonly level: number;
  /** Fisher's information about it, in 1/σ². */
  readonly information: number;
}

/** Every sheet of a model, by its index, and what was cut from none. */
export interface SheetsOfModel {
  readonly settings: readonly Settled[];
  /** Indices into the settings. */
  readonly sheets: readonly (readonly number[])[];
  readonly alone: readonly number[];
  /** Sheets that were cut and ended alike, once, with how many they are. */
  readonly kinds: readonly { readonly sheet: readonly number[]; readonly times: number }[];
}

/** O(observations). */
export const sheetsOf = (model: Model, link: Link): SheetsOfModel => {
  const settings = groupAlike(model).map((group) => ({ ...group, ...startOf(group, link) }));
  const sheets = Array.from({ length: model.sheets }, (): number[] => []);
  const alone: number[] = [];
  settings.forEach(({ cut }, i) => (sheets[cut.sheet] ?? alone).push(i));
  return { settings, sheets, alone, kinds: kindsOf(settings, sheets) };
};

const kindsOf = (
  settings: readonly CutAlike[],
  sheets: SheetsOfModel['sheets'],
): SheetsOfModel['kinds'] => {
  const kinds = new Map<string, { readonly sheet: readonly number[]; times: number }>();
  for (const sheet of sheets) {
    if (sheet.length === 0) continue;
    const key = sheet
      .map((i) => {
        const { cut, out, hangs, stays, notOut, flaw } = settings[i] ?? {};
        return Object.values({ ...cut, outcome: '', count: 0, sheet: 0 })
          .concat([out ?? 0, hangs ?? 0, stays ?? 0, notOut ?? 0, flaw ?? 0])
          .join('|');
      })
      .sort()
      .join(';');
    const kind = kinds.get(key);
    if (kind) kind.times += 1;
    else kinds.set(key, { sheet, times: 1 });
  }
  return [...kinds.values()];
};

const startOf = (
  { cut: { lengths }, out, hangs, stays, notOut }: CutAlike,
  link: Link,
): Pick<Settled, 'level' | 'information'> => {
  const all = out + hangs + stays + notOut;
  const whole = (out + 0.5) / (all + 1);
  const level = levelOf(link, whole ** (1 / lengths));
  const slope = lengths * whole ** (1 - 1 / lengths) * link.pdf(level);
  return { level, information: (all * slope * slope) / Math.max(1e-12, whole * (1 - whole)) };
};

const levelOf = (link: Link, share: number): number => {
  let [low, high] = [-60, 60];
  for (let step = 0; step < 40; step += 1) {
    const middle = 0.5 * (low + high);
    if (link.cdf(middle) < share) low = middle;
    else high = middle;
  }
  return 0.5 * (low + high);
};
