import { compareBody, compareFileBody, comparisonReply } from './compare.ts';
import { route } from './route.ts';

/**
 * The routes of a comparison. Apart from the others, since the page reckons comparisons itself and need not carry their
 * shapes in its first view.
 */
export const compareApi = {
  compareConditions: route({
    method: 'POST',
    path: '/api/compare',
    least: 'reads-and-counts',
    summary: 'Two conditions beside each other: read cards of stored sheets, side by side',
    body: compareBody,
    reply: comparisonReply,
  }),
  calcCompare: route({
    method: 'POST',
    path: '/api/calc/compare',
    least: 'reads-and-counts',
    summary: 'The same for a file of two conditions; nothing is stored',
    body: compareFileBody,
    reply: comparisonReply,
  }),
} as const;
