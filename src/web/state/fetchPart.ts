/** A part of the page that could not be had: the server is away, or has a newer page by now. */
export class PartMissing extends Error {
  constructor(cause: unknown) {
    super('a part of the page could not be fetched', { cause });
  }
}

/**
 * Fetches a part of the page. It does not try again by itself, since that would be in vain: a browser remembers for the
 * life of a page that a part could not be fetched, and never asks again. `Fetched` offers the way out.
 */
export const fetchPart = async <T>(fetching: () => Promise<T>): Promise<T> => {
  try {
    return await fetching();
  } catch (error) {
    throw new PartMissing(error);
  }
};
