import type { Stock } from '../stock/stock.ts';
import type { ProvenSetting } from './provenSetting.ts';

/**
 * The entries that fit all the words, those for the sheet on the bed first: same material and thickness, same batch
 * before others; else in the order in which they came. A word that is a thickness (`3 mm`, `3mm`) fits an entry whose
 * label or caliper says so within 2 %; a word that is a code fits that entry. O(entries × words).
 */
export const searchBook = (
  entries: readonly ProvenSetting[],
  text: string,
  onBed?: Stock,
): readonly ProvenSetting[] => {
  const words = wordsOf(text);
  const fitting = entries.filter((entry) => words.every((word) => fits(entry, word)));
  if (onBed === undefined) return fitting;
  return fitting
    .map((entry, place) => ({ entry, place, near: nearness(entry, onBed) }))
    .sort((a, b) => b.near - a.near || a.place - b.place)
    .map(({ entry }) => entry);
};

type Word =
  | { readonly kind: 'thickness'; readonly mm: number }
  | { readonly kind: 'text'; readonly text: string };

const wordsOf = (text: string): readonly Word[] => {
  const thicknesses: Word[] = [];
  const rest = text.replace(/(\d+(?:[.,]\d+)?)\s*mm\b/gi, (_, figure: string) => {
    thicknesses.push({ kind: 'thickness', mm: Number(figure.replace(',', '.')) });
    return ' ';
  });
  const texts = rest.split(/\s+/).filter((word) => word !== '');
  return [...thicknesses, ...texts.map((word): Word => ({ kind: 'text', text: folded(word) }))];
};

const fits = (entry: ProvenSetting, word: Word): boolean =>
  word.kind === 'thickness'
    ? thicknesses(entry).some((mm) => close(mm, word.mm))
    : folded(textOf(entry)).includes(word.text);

const thicknesses = ({ holdsFor }: ProvenSetting): readonly number[] =>
  holdsFor.measuredThicknessMm === undefined
    ? [holdsFor.nominalThicknessMm]
    : [holdsFor.nominalThicknessMm, holdsFor.measuredThicknessMm];

const close = (one: number, other: number): boolean => Math.abs(one - other) <= 0.02 * other;

const textOf = ({ code, holdsFor, note, personsChoice }: ProvenSetting): string =>
  [code, holdsFor.material, holdsFor.machine, holdsFor.batch, holdsFor.sheet, note, personsChoice]
    .filter((part) => part !== undefined)
    .join(' ');

/** Without case and accents, so that `contreplaque` finds `Contreplaqué`. */
const folded = (text: string): string => text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();

const nearness = ({ holdsFor }: ProvenSetting, onBed: Stock): number => {
  const same =
    folded(holdsFor.material) === folded(onBed.material) &&
    close(holdsFor.nominalThicknessMm, onBed.nominalThicknessMm);
  if (!same) return 0;
  return onBed.batch !== undefined && holdsFor.batch === onBed.batch ? 2 : 1;
};
