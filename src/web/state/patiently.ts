const betweenTriesMs = 2000;

/**
 * Fetches a part of the page, and goes on trying while the server is away: a part that is missing for a while must not
 * take the rest of the page with it.
 */
export const patiently = async <T>(fetchPart: () => Promise<T>): Promise<T> => {
  for (;;) {
    try {
      return await fetchPart();
    } catch {
      await new Promise((resolve) => setTimeout(resolve, betweenTriesMs));
    }
  }
};
