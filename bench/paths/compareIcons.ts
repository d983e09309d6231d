import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';
import { arcsAsCubics } from './arcsAsCubics.ts';
import { browserMeasures, type PathMeasure } from './browserMeasures.ts';
import { ownMeasures } from './ownMeasures.ts';

const require = createRequire(import.meta.url);
const folder = join(dirname(require.resolve('bootstrap-icons/package.json')), 'icons');

export interface Icon {
  readonly name: string;
  readonly text: string;
}

/** Drawings of an icon set that others drew (bootstrap-icons 1.13.2), each n-th of them. */
export const icons = (everyNth = 1): readonly Icon[] =>
  readdirSync(folder)
    .filter((name) => name.endsWith('.svg'))
    .sort()
    .filter((_, i) => i % everyNth === 0)
    .map((name) => ({ name, text: readFileSync(join(folder, name), 'utf8') }));

/** Relative errors of one path: of its length, and of its box to the box's longer side. */
export interface PathError {
  readonly icon: string;
  readonly length: number;
  readonly box: number;
}

export interface IconsCompared {
  readonly paths: number;
  /** Paths that one of the two says have no line. */
  readonly missing: readonly string[];
  /** Both told the cubics that the browser would draw for an arc. */
  readonly sameCubics: readonly PathError[];
  /**
   * Both told the icon as it is. Cubics are up to 1.4e-4 longer than their arc; and where an arc is nearly half an
   * ellipse, the browser's single precision moves its centre by as much again.
   */
  readonly asItIs: readonly PathError[];
}

/**
 * Holds the lengths and boxes of every path of some icons against what a browser says of them. Circles and rectangles,
 * of which the set has four, are left out: the browser measures its own round corners to half a pixel.
 */
export const compareIcons = async (
  page: Page,
  drawings: readonly Icon[],
): Promise<IconsCompared> => {
  const asIs = drawings.map(({ text }) => text);
  const cubics = asIs.map((text) =>
    text.replaceAll(/\bd="([^"]*)"/g, (_, data: string) => `d="${arcsAsCubics(data)}"`),
  );
  const missing: string[] = [];
  const compare = async (texts: readonly string[]): Promise<PathError[]> => {
    const browser = await browserMeasures(page, texts);
    return texts.flatMap((text, i) => {
      const [icon, ours, theirs] = [drawings[i]?.name ?? '', ownMeasures(text), browser[i] ?? []];
      const count = Math.max(ours.length, theirs.length);
      return Array.from({ length: count }, (_, n) => n).flatMap((n) => {
        const [own, their] = [ours[n], theirs[n]];
        if (own !== undefined && their !== undefined) return [{ icon, ...errorsOf(own, their) }];
        missing.push(icon);
        return [];
      });
    });
  };
  const sameCubics = await compare(cubics);
  return { paths: sameCubics.length, sameCubics, asItIs: await compare(asIs), missing };
};

const errorsOf = (own: PathMeasure, their: PathMeasure): Omit<PathError, 'icon'> => {
  const [left, top, right, bottom] = their.box;
  const side = Math.max(right - left, bottom - top);
  const apart = Math.max(...own.box.map((figure, i) => Math.abs(figure - (their.box[i] ?? NaN))));
  return { length: Math.abs(own.length / their.length - 1), box: apart / side };
};

/** The middle and the greatest of some errors. */
export const spread = (
  errors: readonly PathError[],
  of: 'length' | 'box',
): { readonly median: number; readonly worst: number; readonly worstIcon: string } => {
  const sorted = [...errors].sort((a, b) => a[of] - b[of]);
  const last = sorted.at(-1);
  return {
    median: sorted[sorted.length >> 1]?.[of] ?? Number.NaN,
    worst: last?.[of] ?? Number.NaN,
    worstIcon: last?.icon ?? '',
  };
};
