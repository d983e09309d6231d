import { roleText } from '../words/texts.ts';
import type { Route } from '../wire/route.ts';

/** Who may call a route, and what of it takes more: one line for its description. */
export const whoMay = ({ least, leastToSay = {} }: Pick<Route, 'least' | 'leastToSay'>): string =>
  [
    roleText.least[least],
    ...Object.entries(leastToSay).map(([field, role]) =>
      roleText.toSay(field, roleText.least[role]),
    ),
  ].join('; ');
