import type { Model } from '../cutmodel/model.ts';

/** Fits that an explanation may still make: each asks first. */
export interface FitsAllowed {
  /** Takes so many if there are as many left. */
  readonly take: (fits: number) => boolean;
}

/** With so many sheets a point of a fit costs twice as much, and beyond that as their square: their integrals are within it. */
const sheetsThatDouble = 22;

/** What a fit of so many points takes, in points times observations of a study of few sheets (~0.3 µs each). */
export const workOfFit = ({ observations, sheets }: Model, points: number): number =>
  points * Math.max(1, observations.length) * (1 + (sheets / sheetsThatDouble) ** 2);

/**
 * What the fits of one explanation may take together, in points times observations: some five seconds of processor. A fit
 * for each part of a study of many sheets would take minutes, and its parts move the answer little.
 */
export const mostWork = 8e6;

/** The fits that explain one answer, each of so many points. */
export const fitsAllowed = (model: Model, points: number): FitsAllowed => {
  let left = Math.floor(mostWork / workOfFit(model, points));
  return {
    take: (fits) => {
      if (fits > left) return false;
      left -= fits;
      return true;
    },
  };
};
