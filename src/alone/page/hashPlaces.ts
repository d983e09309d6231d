import { useSyncExternalStore } from 'react';

/**
 * Addresses of screens behind a `#`: a page that was opened from a disk, or from a host that knows one file, has no other place
 * for them. `#/study/1?next#top`: path, query, and the part of the screen.
 */
const placeIn = (hash: string): { readonly path: string; readonly search: string } => {
  const [, first = ''] = hash.split('#');
  const [path = '', search = ''] = first.split('?');
  return path.startsWith('/') ? { path, search } : { path: '/', search: '' };
};

const heard = (changed: () => void): (() => void) => {
  addEventListener('hashchange', changed);
  addEventListener('popstate', changed);
  return () => {
    removeEventListener('hashchange', changed);
    removeEventListener('popstate', changed);
  };
};

interface Moving {
  readonly replace?: boolean;
  readonly state?: unknown;
}

const moveTo = (to: string, { replace = false, state = null }: Moving = {}): void => {
  history[replace ? 'replaceState' : 'pushState'](state, '', `#${to}`);
  dispatchEvent(new Event('popstate'));
};

const usePath = (): [string, typeof moveTo] => [
  useSyncExternalStore(heard, () => placeIn(location.hash).path),
  moveTo,
];

const useQuery = (): string => useSyncExternalStore(heard, () => placeIn(location.hash).search);

/** Where the router finds them. */
export const hashPlaces = {
  hook: usePath,
  searchHook: useQuery,
  hrefs: (href: string): string => `#${href}`,
};

/** A link to a part of the screen moves there; it is no address of a screen. */
export const followAnchors = (): void => {
  document.addEventListener('click', (event) => {
    const link = event.target instanceof Element ? event.target.closest('a') : null;
    const href = link?.getAttribute('href') ?? '';
    if (!href.startsWith('#') || href.startsWith('#/')) return;
    event.preventDefault();
    const part = document.getElementById(href.slice(1));
    part?.scrollIntoView();
    part?.focus({ preventScroll: true });
  });
};
