import { lazy, type ComponentType } from 'react';
import { fetchPart } from './fetchPart.ts';
import { fetchTheRest } from './inWords.ts';

/**
 * A part of the page that is fetched when it is needed, and all words with it: one that is opened by its address, or
 * reloaded, may have something to say before anything was tapped.
 */
export const withWords = <Props extends object>(fetchIt: () => Promise<ComponentType<Props>>) =>
  lazy(async () => {
    const [Part] = await Promise.all([fetchPart(fetchIt), fetchTheRest()]);
    return { default: Part };
  });
