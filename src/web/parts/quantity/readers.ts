import { done, refused, type Outcome } from '../../../core/problem.ts';

const plain =
  (units: Readonly<Record<string, number>>, what: string) =>
  (text: string): Outcome<number> => {
    const found = /^\s*(\d+(?:[.,]\d+)?)\s*(.*?)\s*$/.exec(text);
    const factor = units[(found?.[2] ?? '?').toLowerCase()];
    if (found === null || factor === undefined) return refused('not-a-quantity', { text, what });
    return done(Number((found[1] ?? '').replace(',', '.')) * factor);
  };
export const readSpeed = plain({ '': 1, 'mm/s': 1 }, 'a speed');
export const readPower = plain({ '': 1, '%': 1 }, 'a power setting');
export const readLength = plain({ '': 1, mm: 1, cm: 10, in: 25.4 }, 'a length');
